import { showText } from "../../base/index.js";
import { factName, type StatedAccuracy, SURVEY_FACTS } from "../../facts/index.js";
import { type DraftColumn, type DraftSheet, draftOf, type SurveyUnderstood } from "../../records/index.js";
import { wrapText } from "../wording/wrap.js";

/** How a draft is written. */
export interface DraftOptions {
  /** Fix the rows of headings too; else they stand in a comment, since later surveys may have a row more. */
  readonly fixRows: boolean;
}

const COLUMNS_OF_TEXT = 118;

/**
 * A draft of a column file: what a survey is understood as now, line by line, with the columns that are not understood
 * as comments to fill in.
 */
export function columnFileDraft(understood: SurveyUnderstood, { fixRows }: DraftOptions): string {
  const lines = [
    ...comment(
      `How ${showText(understood.file)} is understood. What is said here comes before headings, words and evidence; what is not is understood as usual. ` +
        'A column is { heading, fact, unit, language, decimalSign, accuracy, measuredBy, values }; "fact: ignore" leaves it out, and "values" gives words of its own their meaning, such as values: { "GG": grey-cast-iron }.',
    ),
  ];
  const sheets = draftOf(understood);
  const [only] = sheets;
  if (only && only.sheet.sheet === null) lines.push(...sheetLines(only, "", fixRows));
  else lines.push("sheets:", ...sheets.flatMap((sheet) => namedSheet(sheet, fixRows)));
  const open = sheets.some(
    ({ sheet, columns }) => sheet.likely !== null || columns.some(({ word, again }) => !word && !again),
  );
  if (open) lines.push(...factsToChoose());
  return `${lines.join("\n")}\n`;
}

/** The ids that a person can choose from, by the part of the survey. */
function factsToChoose(): readonly string[] {
  const groups = new Map<string, string[]>();
  for (const { group, id } of SURVEY_FACTS) groups.set(group, [...(groups.get(group) ?? []), id]);
  return [
    ...comment("Facts that a column can be read for:"),
    ...[...groups].flatMap(([group, ids]) => comment(`${group}: ${ids.join(", ")}`, "")),
  ];
}

function namedSheet(draft: DraftSheet, fixRows: boolean): readonly string[] {
  const { sheet } = draft;
  const name = JSON.stringify(sheet.sheet ?? "");
  if (!draft.named)
    return comment(`The sheet "${showText(sheet.sheet ?? "")}" has a name that cannot be written here.`, "  ");
  if (sheet.leftOut) return [`  ${name}: ignore`];
  if (sheet.tables.some((table) => table.read)) return [`  ${name}:`, ...sheetLines(draft, "    ", fixRows)];
  const why = sheet.tables.length > 0 ? "its tables name no points and are not read" : sheet.why;
  if (!sheet.likely) return [...comment(`"${showText(sheet.sheet ?? "")}": ${why}.`, "  "), `  # ${name}: ignore`];
  return [
    ...comment(`"${showText(sheet.sheet ?? "")}": ${why}.`, "  "),
    `  ${name}:`,
    ...sheetLines(draft, "    ", fixRows),
  ];
}

function sheetLines(draft: DraftSheet, indent: string, fixRows: boolean): readonly string[] {
  const { sheet, language, decimalSign, headingRows, columns } = draft;
  const lines: string[] = [];
  if (language !== null) lines.push(`${indent}language: ${language}`);
  if (decimalSign !== null) lines.push(`${indent}decimalSign: ${decimalSign}`);
  if (headingRows.length > 0) lines.push(`${indent}${fixRows ? "" : "# "}headingRows: [${headingRows.join(", ")}]`);
  if (sheet.likely) {
    lines.push(
      ...comment(
        `No row of headings was found. If row ${sheet.likely.row} holds them, take the number signs away.`,
        indent,
      ),
      `${indent}# headingRows: [${sheet.likely.row}]`,
    );
  }
  lines.push(`${indent}columns:`);
  for (const column of columns.filter(({ again }) => !again)) lines.push(...columnLines(column, indent));
  for (const column of sheet.likely?.columns ?? []) lines.push(...columnLines({ column, word: null }, indent));
  return lines;
}

function columnLines({ column, word }: DraftColumn, indent: string): readonly string[] {
  if (!word) {
    const heading = column.heading === "" ? "" : `heading: ${quoted(column.heading)}, `;
    const named = heading === "" ? `column: ${column.letters}, ` : heading;
    return [...comment(openQuestion(column), `${indent}  `), `${indent}  # - { ${named}fact: ignore }`];
  }
  const parts = [
    word.heading === null ? "" : `heading: ${quoted(word.heading)}`,
    word.letters === null ? "" : `column: ${word.letters}`,
    `fact: ${word.fact ?? "ignore"}`,
    word.unit === null ? "" : `unit: ${quoted(word.unit)}`,
    word.language === null ? "" : `language: ${word.language}`,
    word.decimalSign === null ? "" : `decimalSign: ${word.decimalSign}`,
    accuracyPart(word.accuracy ?? null),
    word.values.size === 0
      ? ""
      : `values: { ${[...word.values].map(([text, value]) => `${quoted(text)}: ${value}`).join(", ")} }`,
  ].filter((part) => part !== "");
  return [`${indent}  - { ${parts.join(", ")} }`];
}

function accuracyPart(accuracy: StatedAccuracy | null): string {
  if (accuracy === null) return "";
  return accuracy.way === null ? `accuracy: ${quoted(accuracy.written)}` : `measuredBy: ${accuracy.way}`;
}

function openQuestion({ letters, facts, why, example, candidates }: DraftColumn["column"]): string {
  const near = candidates.map(({ fact }) => `${fact} (${factName(fact)})`).join(", ");
  const shown = example === null ? "" : `${example.cell} holds "${showText(example.text, 40)}"`;
  const known = facts.length > 0 ? `read for ${facts.join(", ")}, and not to be told from another column here` : why;
  return `Column ${letters}: ${[known, shown, near === "" ? "" : `perhaps ${near}`].filter((part) => part !== "").join("; ")}`;
}

/** Text in quotes as YAML reads it; characters that cannot be seen are left out. */
function quoted(text: string): string {
  return JSON.stringify(
    text
      .replace(/\s+/g, " ")
      .replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu, "")
      .trim(),
  );
}

function comment(text: string, indent: string = ""): readonly string[] {
  return wrapText(showText(text, 2000), COLUMNS_OF_TEXT - indent.length).map((line) => `${indent}# ${line}`);
}
