import type { ResultHead, Summary } from "../../screening/index.js";
import { bookInWords } from "../wording/overlays.js";
import { methodsSection, settlingSection } from "./advice-sections.js";
import { deviationsSection } from "./deviations-section.js";
import { groupsSection } from "./groups-section.js";
import { paragraph } from "./layout.js";
import { notAskedSection } from "./not-asked-section.js";
import { overlaysSection } from "./overlays-section.js";
import { columnsSection, problemsSection, readSection, rulesSection, verdictsSection } from "./sections.js";

/** A file that the run wrote, with what it holds ("screened workbook"). */
export interface WrittenFile {
  readonly what: string;
  readonly file: string;
  /** What is to be known of it, or null. */
  readonly note: string | null;
}

/**
 * The report for a terminal: plain text without colours, at most 100 columns wide, ending in a line break.
 * Control characters of the survey never reach the terminal.
 *
 * @param written - where results were written, empty if nowhere
 */
export function terminalReport(head: ResultHead, summary: Summary, written: readonly WrittenFile[] = []): string {
  const sections = [
    titleSection(head),
    readSection(head),
    ...head.surveys.filter((survey) => survey.columns.length > 0).map(columnsSection),
    problemsSection(head.surveys),
    overlaysSection(head),
    rulesSection(head, summary),
    groupsSection(head),
    notAskedSection(head),
    settlingSection(summary),
    methodsSection(summary),
    deviationsSection(head, summary),
    verdictsSection(summary),
    head.cautions.length === 0 ? [] : paragraph(head.cautions.join(" "), "Cautions: "),
    written.flatMap(writtenLines),
  ];
  const texts = sections.filter((lines) => lines.length > 0).map((lines) => lines.join("\n"));
  return `${texts.join("\n\n")}\n`;
}

/** What is said of a file that was written. */
export function writtenLines({ what, file, note }: WrittenFile): readonly string[] {
  return [...paragraph(`${what}: ${file}`, "Written: "), ...(note === null ? [] : paragraph(note, "         "))];
}

function titleSection(head: ResultHead): readonly string[] {
  const overdue = head.rules.filter((rule) => rule.reviewOverdue).map((rule) => rule.id);
  return [
    ...paragraph(
      `${head.program.name} ${head.program.version}: rulebook ${bookInWords(head.rulebook)}, ` +
        `set ${head.set}, points ${head.stage}, limits as of ${head.asOf}`,
    ),
    ...(head.site.name === null ? [] : paragraph(`Site: ${head.site.name}`)),
    ...(overdue.length === 0 ? [] : paragraph(`Limits overdue for review: ${overdue.join(", ")}`)),
  ];
}
