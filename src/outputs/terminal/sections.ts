import { showText } from "../../base/index.js";
import { factName, plainWords } from "../../facts/index.js";
import { describeProblem, type ImportProblem, type SheetReading } from "../../records/index.js";
import type { ResultHead, Summary, SurveyShown } from "../../screening/index.js";
import { indexRules } from "../findings/rule-index.js";
import { countOf } from "../wording/numbers.js";
import { markedOutcome } from "../wording/outcomes.js";
import { paragraph, table } from "./layout.js";

export const LANGUAGE_NAMES = { en: "English", de: "German", es: "Spanish", fr: "French" } as const;
const PROBLEMS_SHOWN_PER_KIND = 3;
const RULES_SHOWN = 8;

/** Which files and sheets were read, and which were not. */
export function readSection(head: ResultHead): readonly string[] {
  const lines = ["Read"];
  for (const survey of head.surveys) {
    lines.push(...paragraph(survey.file, "  "));
    for (const sheet of survey.sheets) lines.push(...paragraph(sheetInWords(sheet), "    - "));
  }
  const { columnFile, wordFiles, options } = head.reading;
  const settled = [
    ...(columnFile === null ? [] : [`column file ${columnFile.file}`]),
    ...wordFiles.map(({ file }) => `words of ${file}`),
    ...options,
  ];
  if (settled.length > 0) lines.push(...paragraph(settled.join(", "), "  with "));
  for (const left of head.skipped) lines.push(...paragraph(`${left.file}: left out, ${left.text}`, "  "));
  return lines;
}

function sheetInWords(sheet: SheetReading): string {
  const name = sheet.sheet === null ? "" : `"${showText(sheet.sheet, 40)}"${sheet.hidden ? " (hidden)" : ""}: `;
  if (!sheet.used) return `${name}not read as points, ${sheet.why}`;
  const rows = `${sheet.headingRows.length > 1 ? "rows" : "row"} ${sheet.headingRows.join(" and ")}`;
  const headings = sheet.headingRows.length === 0 ? "no headings" : `headings in ${rows}`;
  const language = sheet.language === null ? "language open" : LANGUAGE_NAMES[sheet.language];
  return `${name}${headings}, ${countOf(sheet.pointRows, "point")}, ${language} (${sheet.languageWhy})`;
}

/** What each column was taken for, and which are not used. */
export function columnsSection(survey: SurveyShown): readonly string[] {
  const used = survey.columns.filter((column) => column.facts.length > 0);
  const unused = survey.columns.filter((column) => column.facts.length === 0);
  const several = new Set(survey.columns.map((column) => column.sheet)).size > 1;
  const place = (column: (typeof used)[number]) =>
    several && column.sheet !== null ? `${showText(column.sheet, 12)}!${column.column}` : column.column;
  const lines = paragraph(`Columns of ${survey.file}`).slice();
  if (used.length > 0) {
    const headings = [
      { heading: "", width: 18 },
      { heading: "heading", width: 34 },
      { heading: "taken for", width: 34 },
      { heading: "unit", width: 6 },
    ];
    const rows = used.map((column) => [
      place(column),
      showText(column.heading, 60),
      column.facts.map(factName).join(", "),
      column.unit ?? "",
    ]);
    lines.push(...table(headings, rows));
  }
  if (unused.length > 0) {
    const names = unused.map((column) => `${place(column)} "${showText(column.heading, 40)}"`);
    lines.push(...paragraph(`not used: ${names.join(", ")}`, "  "));
  }
  return lines;
}

/** Problems by kind, the commonest first, each kind with its count and the first few places. */
export function problemsSection(surveys: readonly SurveyShown[]): readonly string[] {
  const kinds = new Map<string, ImportProblem[]>();
  for (const problem of surveys.flatMap((survey) => survey.problems)) {
    const others = kinds.get(problem.code);
    if (others) others.push(problem);
    else kinds.set(problem.code, [problem]);
  }
  if (kinds.size === 0) return [];
  const total = [...kinds.values()].reduce((sum, of) => sum + of.length, 0);
  const lines = [`Remarks on reading: ${total}`];
  for (const [code, problems] of [...kinds].sort((a, b) => b[1].length - a[1].length)) {
    lines.push(`  ${plainWords(code)}: ${problems.length}`);
    for (const problem of problems.slice(0, PROBLEMS_SHOWN_PER_KIND)) {
      lines.push(...paragraph(describeProblem(problem).replace(/ \[[a-z-]+\]$/, ""), "    - "));
    }
    const more = problems.length - PROBLEMS_SHOWN_PER_KIND;
    if (more > 0) lines.push(`    - and ${more} more`);
  }
  return lines;
}

/** Counts of verdicts, with shape and word. */
export function verdictsSection(summary: Summary): readonly string[] {
  const rows = (["fail", "warn", "pass"] as const).map((verdict) => [markedOutcome(verdict), summary[verdict]]);
  const open = summary.warnOnlyUndecided;
  const lines = [
    `Verdicts on ${countOf(summary.points, "point")}`,
    ...table(
      [
        { heading: "", width: 20 },
        { heading: "", width: 10, align: "right" },
      ],
      rows,
    ).filter((l) => l !== ""),
  ];
  if (open > 0) lines.push(`  of those that warn, only because something is not known: ${open}`);
  if (summary.accepted > 0) lines.push(`  of those that do not pass, accepted: ${summary.accepted}`);
  return lines;
}

/** The rules that stand in the way most. */
export function rulesSection(head: ResultHead, summary: Summary): readonly string[] {
  const rules = indexRules(head);
  const open = (counts: Summary["byRule"][number]) => counts.undecided + counts.noLimitInForce;
  const troubling = summary.byRule
    .filter((counts) => counts.fail + counts.warn + open(counts) > 0)
    .sort(
      (a, b) => b.fail - a.fail || open(b) - open(a) || b.warn - a.warn || rules.order(a.rule) - rules.order(b.rule),
    )
    .slice(0, RULES_SHOWN);
  const lines: string[] = [];
  if (troubling.length > 0) {
    const headings = [
      { heading: "rule", width: 24 },
      { heading: "demands", width: 42 },
      { heading: "fail", width: 6, align: "right" as const },
      { heading: "warn", width: 6, align: "right" as const },
      { heading: "undecided", width: 9, align: "right" as const },
    ];
    const rows = troubling.map((c) => [c.rule, rules.title(c.rule), c.fail, c.warn, open(c)]);
    lines.push("Rules that stand in the way most", ...table(headings, rows));
  }
  return lines;
}
