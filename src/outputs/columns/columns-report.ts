import { showText } from "../../base/index.js";
import { factName } from "../../facts/index.js";
import {
  type ColumnUnderstood,
  describeProblem,
  type SheetUnderstood,
  type SurveyUnderstood,
  type TableUnderstood,
} from "../../records/index.js";
import { paragraph, table } from "../terminal/layout.js";
import { LANGUAGE_NAMES } from "../terminal/sections.js";
import { countOf } from "../wording/numbers.js";

/**
 * How a survey is understood, for a terminal: sheet by sheet, each column with what it is read for and why, how many
 * cells could be read, and an example; at most 100 columns wide.
 */
export function columnsReport(understood: SurveyUnderstood): string {
  const { file, sheets, reading } = understood;
  const missed = reading.ok ? reading.survey.problems.filter(({ code }) => code === "not-in-survey") : [];
  const sections = [
    [...paragraph(file), ...(reading.ok ? [] : paragraph(reading.text, "  "))],
    ...sheets.map(sheetSection),
    missed.flatMap((problem) => paragraph(describeProblem(problem).replace(/ \[[a-z-]+\]$/, ""), "  ! ")),
  ];
  const texts = sections.filter((lines) => lines.length > 0).map((lines) => lines.join("\n"));
  return `${texts.join("\n\n")}\n`;
}

function sheetSection(sheet: SheetUnderstood): readonly string[] {
  const name =
    sheet.sheet === null ? "The file" : `Sheet "${showText(sheet.sheet, 60)}"${sheet.hidden ? " (hidden)" : ""}`;
  if (sheet.tables.length === 0) {
    return [...paragraph(`${name}: not read, ${sheet.why}`), ...(sheet.likely ? likelySection(sheet.likely) : [])];
  }
  const language = sheet.language === null ? "language open" : LANGUAGE_NAMES[sheet.language];
  return [
    ...paragraph(`${name}: ${sheet.why}; ${language} (${sheet.languageWhy})`),
    ...sheet.tables.flatMap((one) => tableSection(one)),
  ];
}

function tableSection(one: TableUnderstood): readonly string[] {
  const rows = `${one.headingRows.length > 1 ? "rows" : "row"} ${one.headingRows.join(", ")}`;
  if (!one.read)
    return paragraph(`headings in ${rows}: the table names no point and no machine, and is not read`, "  ");
  const used = one.columns.filter(({ facts }) => facts.length > 0);
  const open = one.columns.filter(({ facts, ignored }) => facts.length === 0 && !ignored);
  const ignored = one.columns.filter((column) => column.ignored);
  return [
    ...paragraph(`headings in ${rows}, ${countOf(one.points, "point")}`, "  "),
    ...numbersLines(used),
    ...usedTable(used),
    ...used.flatMap(accuracyLines),
    ...(open.length === 0 ? [] : ["  not understood"]),
    ...open.flatMap(openLines),
    ...ignored.flatMap(({ letters, heading, why }) => paragraph(`${letters} "${heading}": ${why}`, "  ")),
    ...one.clashes.flatMap(({ fact, letters, contradictions }) =>
      paragraph(
        `${factName(fact)} stands in columns ${letters.join(" and ")}; they are compared cell by cell and contradict each other in ${countOf(contradictions, "row")}`,
        "  ! ",
      ),
    ),
  ];
}

function usedTable(used: readonly ColumnUnderstood[]): readonly string[] {
  if (used.length === 0) return [];
  const headings = [
    { heading: "", width: 3 },
    { heading: "heading", width: 17 },
    { heading: "read for", width: 20 },
    { heading: "read", width: 4, align: "right" as const },
    { heading: "unclear", width: 7, align: "right" as const },
    { heading: "empty", width: 5, align: "right" as const },
    { heading: "example", width: 11 },
    { heading: "why", width: 15 },
  ];
  const rows = used.map(({ letters, heading, facts, unit, counts, example, why }) => [
    letters,
    heading,
    `${facts.map(factName).join("; ")}${unit === null ? "" : ` [${unit}]`}`,
    counts.read,
    counts.unreadable,
    counts.missing,
    example === null ? "" : showText(example.text, 36),
    why.replace(/^column file .* line (\d+)$/, "column file, line $1"),
  ]);
  return table(headings, rows);
}

/** How accurate the numbers of a column are, where somebody says so. */
function accuracyLines({ letters, heading, accuracy }: ColumnUnderstood): readonly string[] {
  if (accuracy === null) return [];
  const said = accuracy.stated === null ? accuracy.why : `${accuracy.stated.words} (${accuracy.why})`;
  return paragraph(`${letters} "${heading}": ${said}`, accuracy.stated === null ? "  ! " : "  ");
}

/** The columns that hold numbers, by how their numbers are read. */
function numbersLines(used: readonly ColumnUnderstood[]): readonly string[] {
  const groups = new Map<string, string[]>();
  for (const { numbers, decimalSign, decimalWhy, letters } of used) {
    if (!numbers) continue;
    const sign = decimalSign === null ? "as the language or the number itself says" : `decimal ${decimalSign}`;
    const said = decimalWhy.startsWith(sign) ? decimalWhy : `${sign} (${decimalWhy})`;
    groups.set(said, [...(groups.get(said) ?? []), letters]);
  }
  const several = groups.size > 1;
  return [...groups].flatMap(([said, letters]) =>
    paragraph(`numbers${several ? ` in ${letters.join(", ")}` : ""}: ${said}`, "  "),
  );
}

function openLines({ letters, heading, why, example, candidates }: ColumnUnderstood): readonly string[] {
  const near = candidates
    .map(({ fact, heading: listed }) => (listed === null ? fact : `${fact} (listed: ${listed})`))
    .join(", ");
  const shown = example === null ? "" : `${example.cell} holds "${showText(example.text, 40)}"`;
  const said = [why, shown, near === "" ? "" : `perhaps ${near}`].filter((part) => part !== "");
  return paragraph(`${letters} "${heading}": ${said.join("; ")}`, "    - ");
}

function likelySection({ row, columns }: NonNullable<SheetUnderstood["likely"]>): readonly string[] {
  return [
    ...paragraph(`row ${row} looks most like headings; a column file can say so`, "  "),
    ...columns.flatMap(openLines),
  ];
}
