import { didYouMean, showText, windows1252Byte } from "../base/index.js";
import { below, type Report } from "../rulebook/index.js";
import { fileNameTrouble } from "./file-name.js";
import type { Column, FileForm, RowsOf, Target } from "./mapping.js";
import type { RawForm, RawTarget } from "./raw.js";
import { readColumn } from "./read-column.js";
import { readFilter } from "./read-filter.js";
import { readName } from "./read-name.js";
import { checkWithdrawn } from "./read-withdrawn.js";
import { SIGNS } from "./write-value.js";

const DEFAULT_FORM: Omit<FileForm, "kind"> = {
  encoding: "utf-8",
  separator: "comma",
  lineEnd: "crlf",
  decimalSign: "point",
  days: "YYYY-MM-DD",
  whenEmpty: "omit",
  separatorInValues: "quote",
};

/** What the targets of one mapping share. */
export interface TargetSurroundings {
  readonly form: RawForm;
  readonly rules: ReadonlySet<string>;
  /** Targets that come before. */
  readonly before: readonly Target[];
}

/** Reads one target. Mistakes are reported; what could be read is given back. */
export function readTarget(raw: RawTarget, pointer: string, around: TargetSurroundings, report: Report): Target {
  const hasParts = raw.rowLimit !== undefined;
  const file = raw.file ?? `{number}-{target}${hasParts ? "-{part}" : ""}.csv`;
  const trouble = fileNameTrouble(file, hasParts);
  if (trouble !== null) report.atValue(below(pointer, "file"), "bad-file-name", `"${showText(file)}": ${trouble}`);
  const kind = file.endsWith(".xlsx") ? "xlsx" : "csv";
  const whole: FileForm = { ...DEFAULT_FORM, ...around.form, ...raw.form, kind };
  // A workbook holds numbers as numbers; the program that shows it puts its own decimal sign.
  const form: FileForm =
    kind === "csv" ? whole : { ...whole, encoding: "utf-8", decimalSign: "point", separatorInValues: "quote" };
  if (form.separator === "comma" && form.decimalSign === "comma" && form.separatorInValues === "stop") {
    report.atValue(
      below(pointer, "form"),
      "comma-twice",
      "a decimal comma stands within every number; take another separator",
    );
  }
  const { separatorInValues } = form;
  if (typeof separatorInValues === "object" && separatorInValues.replaceBy.includes(SIGNS[form.separator])) {
    const text = "what replaces the separator has it in itself; take another text";
    report.atValue(below(pointer, "form"), "separator-again", text);
  }
  const rows = readRows(raw.rows ?? "point", below(pointer, "rows"), report);
  const columns = raw.columns.flatMap((column, index): Column[] => {
    const at = below(pointer, "columns", index);
    const read = readColumn(column, at, { form, grouped: rows.one !== "point" }, report);
    return read === null ? [] : [read];
  });
  const target: Target = {
    id: raw.target,
    number: around.before.length + 1,
    file,
    rows,
    filter: readFilter(raw.where, below(pointer, "where"), around.rules, report),
    rowLimit: raw.rowLimit ?? null,
    form,
    columns,
    withdrawn: raw.withdrawn ?? null,
    at: report.placeOf(pointer),
  };
  checkHeadings(raw, target, pointer, report);
  checkReferences(raw, pointer, around.before, report);
  checkWithdrawn(raw, target, pointer, report);
  return target;
}

function readRows(raw: NonNullable<RawTarget["rows"]>, pointer: string, report: Report): RowsOf {
  if (raw === "point") return { one: "point" };
  if (raw.one === "point")
    report.atValue(
      below(pointer, "one"),
      "taken-word",
      'write "rows: point" for a row per point, or take another word',
    );
  const per = raw.per.flatMap((given, index) => {
    const { by, whenEmpty = "stop" } = typeof given === "string" ? { by: given } : given;
    const reading = readName(by, null);
    if (reading.ok) return [{ name: reading.name, whenEmpty }];
    report.atValue(below(pointer, "per", index), reading.code, reading.text);
    return [];
  });
  return { one: raw.one, per };
}

function checkHeadings(raw: RawTarget, { form }: Target, pointer: string, report: Report): void {
  const seen = new Map<string, number>();
  for (const [index, { heading }] of raw.columns.entries()) {
    const at = below(pointer, "columns", index, "heading");
    const before = seen.get(heading);
    if (before !== undefined) {
      report.atValue(
        at,
        "heading-twice",
        `column ${before + 1} has the heading "${showText(heading)}" already; the other side could not tell them apart`,
      );
    }
    seen.set(heading, index);
    const strange =
      form.encoding === "windows-1252"
        ? [...heading].find((sign) => windows1252Byte(sign.codePointAt(0) ?? 0) === null)
        : undefined;
    if (strange !== undefined) {
      report.atValue(
        at,
        "not-in-encoding",
        `"${showText(strange)}" cannot be written in ${form.encoding}; choose another heading, or utf-8`,
      );
    }
  }
}

function checkReferences(raw: RawTarget, pointer: string, before: readonly Target[], report: Report): void {
  for (const [index, { references }] of raw.columns.entries()) {
    if (references === undefined) continue;
    const at = below(pointer, "columns", index, "references");
    const parent = before.find(({ id }) => id === references);
    if (parent === undefined) {
      const known = before.map(({ id }) => id);
      const near =
        didYouMean(references, known) || "; what is referred to must be loaded first, so write its target above";
      report.atValue(at, "unknown-target", `no target before this one is called "${references}"${near}`);
    } else if (parent.columns.filter(({ key }) => key).length !== 1) {
      report.atValue(at, "no-single-key", `"${references}" must have one key column to be referred to`);
    }
  }
}
