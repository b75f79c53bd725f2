import { didYouMean, showText } from "../base/index.js";
import { findFact, isNumeric } from "../facts/index.js";
import { below, type Report } from "../rulebook/index.js";
import { choicesOf } from "./choices.js";
import { FIELDS } from "./fields.js";
import { formulaTrouble } from "./formula.js";
import { lengthOf } from "./length.js";
import { CHARACTER_CLASSES, type Column, type ColumnSource, type FileForm, type Name } from "./mapping.js";
import type { RawColumn } from "./raw.js";
import { readFact, readName } from "./read-name.js";
import { namesIn, readTemplate } from "./template.js";

const SOURCES = ["field", "fact", "constant", "template", "each"] as const;

/** Where a column stands: the form of its file, and whether a row speaks of several points. */
export interface ColumnSurroundings {
  readonly form: FileForm;
  readonly grouped: boolean;
}

/** Reads one column; null where its source cannot be made out. */
export function readColumn(
  raw: RawColumn,
  pointer: string,
  { form, grouped }: ColumnSurroundings,
  report: Report,
): Column | null {
  const source = readSource(raw, pointer, report);
  if (source === null) return null;
  const type = raw.type ?? (raw.key === true ? "code" : "text");
  const column: Column = {
    heading: raw.heading,
    source,
    type,
    key: raw.key ?? false,
    required: (raw.required ?? false) || (raw.key ?? false),
    values: raw.values === undefined ? null : new Map(Object.entries(raw.values)),
    length: raw.length === undefined ? null : { mark: "…", ...raw.length },
    characters: raw.characters ?? null,
    lines: raw.lines ?? "one",
    whenEmpty: raw.whenEmpty ?? form.whenEmpty,
    days: raw.days ?? form.days,
    decimals: raw.decimals ?? null,
    takes: raw.takes ?? "value",
    references: raw.references ?? null,
  };
  checkKinds(raw, column, pointer, report);
  checkCode(raw, column, pointer, report);
  checkValues(raw, column, pointer, report);
  if (source.from === "each" && !grouped) {
    report.atKey(below(pointer, "each"), "not-grouped", "a row speaks of one point here; write a template instead");
  }
  return column;
}

function readSource(raw: RawColumn, pointer: string, report: Report): ColumnSource | null {
  const given = SOURCES.filter((source) => raw[source] !== undefined);
  if (given.length !== 1) {
    const found = given.length === 0 ? "none" : given.join(" and ");
    report.atValue(pointer, "one-source", `a column has one of ${SOURCES.join(", ")}; found ${found}`);
    return null;
  }
  if (raw.unit !== undefined && raw.fact === undefined) {
    report.atKey(
      below(pointer, "unit"),
      "no-unit",
      "only a fact is written in a unit; in a template write {fact in unit}",
    );
  }
  if (raw.join !== undefined && raw.each === undefined) {
    report.atKey(below(pointer, "join"), "nothing-to-join", "only the texts of each are joined; leave it out");
  }
  if (raw.constant !== undefined) return { from: "constant", text: raw.constant };
  if (raw.field !== undefined) return { from: "name", name: { of: "field", name: raw.field } };
  if (raw.fact !== undefined) {
    const reading = readFact(raw.fact, raw.unit ?? null);
    if (reading.ok) return { from: "name", name: reading.name };
    report.atValue(below(pointer, "unit"), reading.code, reading.text);
    return null;
  }
  const key = raw.each === undefined ? "template" : "each";
  const reading = readTemplate(raw[key] ?? "", readName);
  if (!reading.ok) {
    report.atValue(below(pointer, key), "bad-template", reading.text);
    return null;
  }
  if (key === "template") return { from: "template", template: reading.template };
  const ofRow = namesIn(reading.template).find(
    (name) => name.of === "field" && FIELDS[name.name]?.of === "row" && name.name !== "id",
  );
  if (ofRow?.of === "field") {
    report.atValue(
      below(pointer, key),
      "not-of-a-point",
      `"${ofRow.name}" is of the whole row; take it into a template`,
    );
  }
  return { from: "each", template: reading.template, join: raw.join ?? "\n" };
}

/** Whether what stands under the name can be of the type at all. */
function checkKinds(raw: RawColumn, column: Column, pointer: string, report: Report): void {
  const { source, type } = column;
  const kind = source.from === "name" ? kindOf(source.name) : "text";
  if (column.values === null && type === "number" && source.from !== "constant" && kind !== "number") {
    report.atValue(
      below(pointer, "type"),
      "wrong-kind",
      "its source is no number; write text or code, or give a list of values",
    );
  }
  if (type === "date" && (column.values !== null || kind !== "date")) {
    report.atValue(below(pointer, "type"), "wrong-kind", "its source is no day; write text");
  }
  for (const key of ["decimals", "takes"] as const) {
    if (raw[key] !== undefined && kind !== "number") {
      report.atKey(below(pointer, key), "no-number", "its source is no number; leave this out");
    }
  }
}

function kindOf(name: Name): "number" | "date" | "text" {
  if (name.of === "field") {
    const kind = FIELDS[name.name]?.kind;
    return kind === "count" ? "number" : kind === "date" ? "date" : "text";
  }
  const definition = findFact(name.id);
  if (definition === undefined) return "text";
  return isNumeric(definition) ? "number" : definition.kind === "date" ? "date" : "text";
}

function checkCode(raw: RawColumn, column: Column, pointer: string, report: Report): void {
  const { type, key } = column;
  if (key && (type === "text" || type === "date")) {
    report.atValue(
      below(pointer, "type"),
      "key-of-text",
      "a key is a code or a number; a text may be shortened or neutralised",
    );
  }
  if (type !== "text" && column.length?.tooLong === "shorten") {
    report.atValue(below(pointer, "length", "tooLong"), "never-cut", `a ${type} is never cut; write stop`);
  }
  if (type !== "code" && raw.characters !== undefined) {
    report.atKey(below(pointer, "characters"), "no-code", "only codes are held to characters; leave this out");
  }
  for (const [index, sign] of (raw.characters ?? []).entries()) {
    if ([...sign].length === 1 || CHARACTER_CLASSES.some((known) => known === sign)) continue;
    const near = didYouMean(sign, CHARACTER_CLASSES) || `; use ${CHARACTER_CLASSES.join(", ")} or a single sign`;
    report.atValue(
      below(pointer, "characters", index),
      "unknown-class",
      `"${showText(sign)}" is no class of characters${near}`,
    );
  }
  if (type !== "code") return;
  if (column.source.from === "constant") reportFormula(column.source.text, below(pointer, "constant"), report);
  for (const [word, value] of column.values ?? []) reportFormula(value, below(pointer, "values", word), report);
}

/** A code that the mapping itself writes is looked at when it is read. */
function reportFormula(code: string, pointer: string, report: Report): void {
  const trouble = formulaTrouble(code);
  if (trouble !== null) report.atValue(pointer, "formula", trouble);
}

function checkValues(raw: RawColumn, { values, length, source }: Column, pointer: string, report: Report): void {
  if (values === null) {
    if (raw.otherwise !== undefined)
      report.atKey(below(pointer, "otherwise"), "no-values", "there is no list of values; leave this out");
    return;
  }
  if (raw.otherwise === undefined) {
    report.atKey(
      below(pointer, "values"),
      "no-otherwise",
      'add "otherwise: stop": a word that is not in the list is refused',
    );
  }
  if (source.from !== "name") {
    report.atKey(
      below(pointer, "values"),
      "nothing-to-list",
      "a list of values is for a field or a fact; leave it out",
    );
    return;
  }
  const choices = choicesOf(source.name);
  for (const [word, value] of values) {
    const at = below(pointer, "values", word);
    if (choices !== null && !choices.includes(word)) {
      const near = didYouMean(word, choices) || `; it has ${choices.join(", ")}`;
      report.atKey(at, "unknown-word", `"${showText(word)}" is no word of its source${near}`);
    }
    if (length !== null && lengthOf(value, length.counted) > length.most) {
      report.atValue(at, "too-long", `"${showText(value)}" is longer than ${length.most}; write a shorter one`);
    }
  }
}
