import type { BuiltHead, BuiltPoint, BuiltSummary } from "../../built/index.js";
import { factName } from "../../facts/index.js";
import { describeProblem } from "../../records/index.js";
import { paragraph, table } from "../terminal/layout.js";
import { type WrittenFile, writtenLines } from "../terminal/report.js";
import { columnsSection, problemsSection, readSection } from "../terminal/sections.js";
import { countOf } from "../wording/numbers.js";
import { bookInWords } from "../wording/overlays.js";
import { issuedSection } from "./issued-section.js";
import { BuiltLists } from "./lists.js";

/** Facts named among those that differ most often. */
const FACTS_SHOWN = 8;

/** Gathers what the report shows while the points pass by, and makes it. */
export class BuiltReport {
  readonly #lists = new BuiltLists();

  see(point: BuiltPoint): void {
    this.#lists.see(point);
  }

  /**
   * The report for a terminal: plain text without colours, at most 100 columns wide, ending in a line break.
   *
   * @param written - where results were written, empty if nowhere
   */
  text(head: BuiltHead, summary: BuiltSummary, written: readonly WrittenFile[] = []): string {
    const surveys = head.sameSurvey
      ? head.proposed.surveys
      : [...head.proposed.surveys, ...head.built.surveys.filter(({ columns }) => columns.length > 0)];
    const sections = [
      titleSection(head),
      readSection(head.proposed).map((line, i) => (i === 0 ? "Read as proposed" : line)),
      head.sameSurvey
        ? ["Read as built: the same survey"]
        : readSection(head.built).map((line, i) => (i === 0 ? "Read as built" : line)),
      ...surveys.map(columnsSection),
      problemsSection(surveys),
      remarksSection(head),
      issuedSection(head.issued),
      ...this.#lists.sections(),
      differingFacts(summary),
      countsSection(summary),
      paragraph(head.cautions.join(" "), "Cautions: "),
      written.flatMap(writtenLines),
    ];
    const texts = sections.filter((lines) => lines.length > 0).map((lines) => lines.join("\n"));
    return `${texts.join("\n\n")}\n`;
  }
}

function titleSection({ program, built }: BuiltHead): readonly string[] {
  const { rulebook, set, asOf, site } = built;
  return [
    ...paragraph(
      `${program.name} ${program.version}: proposed against built, rulebook ${bookInWords(rulebook)}, ` +
        `set ${set}, limits as of ${asOf}`,
    ),
    ...(site.name === null ? [] : paragraph(`Site: ${site.name}`)),
  ];
}

function remarksSection({ remarks }: BuiltHead): readonly string[] {
  if (remarks.length === 0) return [];
  const lines = remarks.flatMap((one) => paragraph(describeProblem(one).replace(/ \[[a-z-]+\]$/, ""), "  - "));
  return ["To be known of this comparison", ...lines];
}

function differingFacts({ byFact }: BuiltSummary): readonly string[] {
  if (byFact.length === 0) return [];
  const named = byFact.slice(0, FACTS_SHOWN).map(({ fact, points }) => `${factName(fact)} (${points})`);
  return paragraph(named.join(", "), "What differs most: ");
}

function countsSection(summary: BuiltSummary): readonly string[] {
  const rows: readonly (readonly [string, number])[] = [
    ["proposed and built", summary.matched],
    ["  of these ■ fail as built", summary.fail],
    ["  of these ▲ warn as built", summary.warn],
    ["  of these ● pass as built", summary.pass],
    ["orders to be recalled", summary.recalled],
    ["  of these only because something is not recorded", summary.recalledOnlyUndecided],
    ["built without a verdict that covers it", summary.needsNewVerdict],
    ["built although the proposal failed", summary.againstVerdict],
    ["built, not proposed", summary.notProposed],
    ["in several rows of one side", summary.twice],
    ["rows without an id", summary.noId],
    ["built otherwise than proposed", summary.differing],
    ["verdict better now", summary.rises],
    ["not built yet", summary.notBuilt],
  ];
  return [
    `Proposed against built: ${countOf(summary.points, "point")}`,
    ...table(
      [
        { heading: "", width: 56 },
        { heading: "", width: 10, align: "right" },
      ],
      rows,
    ).filter((line) => line !== ""),
  ];
}
