import type { Outcome } from "../../../base/index.js";
import {
  type FindingData,
  type FindingsData,
  GROUP_FINDINGS,
  type GroupData,
  OUTCOMES,
  POINT_FINDINGS,
  type PointData,
  type ReportData,
  textAt,
} from "./data.js";

/** A fact of a finding with the cells in which it stands. */
export interface FactRead {
  readonly text: string;
  /** Name of the sheet of the point, where the first of its cells stands there; on paper the line of the point says it. */
  readonly ownSheet: string;
  readonly cells: string;
}

/** A finding in words. */
export interface FindingRead {
  readonly rule: string;
  readonly title: string;
  readonly outcome: Outcome;
  readonly message: string;
  readonly facts: readonly FactRead[];
  readonly limit: string;
  readonly source: string;
  /** On paper in place of the source, which the list of rules tells in full. */
  readonly sourceInShort: string;
  readonly margin: string;
  readonly missing: string;
  readonly remedy: string;
  readonly accepted: string;
  /** Id of the group that it is said of, or empty. */
  readonly group: string;
}

/** What a line of the list leads with, and what is told when it is opened. */
export interface Entry {
  readonly outcome: Outcome;
  readonly accepted: boolean;
  readonly label: string;
  readonly name: string;
  /** Where it stands in the survey; the file only where there are several. Empty for a group. */
  readonly row: string;
  /** What a person should read first; empty where nothing speaks against the point. */
  readonly leading: string;
  /** Said of it as a whole, each with what it is; texts may have several lines. */
  readonly notes: readonly (readonly [what: string, text: string])[];
  readonly findings: readonly FindingRead[];
}

/** A point in words. */
export function pointEntry(data: ReportData, point: PointData): Entry {
  const [, label, name, id, file, sheet, row, verdict, accepted, other, tried, settledBy] = point;
  const text = textOf(data);
  const sheetName = text(data.sheets[sheet]);
  const place = sheetName === "" ? `line ${row}` : `${sheetName}, row ${row}`;
  const placeInFile = `${text(data.files[file])}, ${place}`;
  const findings = findingsRead(data, point.slice(POINT_FINDINGS) as FindingsData, sheet);
  return {
    outcome: OUTCOMES[verdict] ?? "undecided",
    accepted: accepted === 1,
    label: text(label),
    row: data.files.length === 1 ? place : placeInFile,
    // What only repeats the label is told below.
    name: text(name).endsWith(text(label)) ? "" : text(name),
    leading: leadingOf(findings),
    notes: noted([
      ["Point", text(name)],
      ["Row", placeInFile],
      ["Id", id],
      ["Settled by", text(settledBy)],
      ["Another method", text(other)],
      ["Methods tried", text(tried)],
    ]),
    findings,
  };
}

/** A group in words. */
export function groupEntry(data: ReportData, group: GroupData): Entry {
  const [, id, rows, disagreements, notCounted] = group;
  const text = textOf(data);
  const findings = findingsRead(data, group.slice(GROUP_FINDINGS) as FindingsData, null);
  return {
    outcome: findings[0]?.outcome ?? "pass",
    accepted: false,
    label: text(id),
    name: "",
    row: "",
    leading: leadingOf(findings),
    notes: noted([
      ["Rows", text(rows)],
      ["Stated differently", text(disagreements)],
      ["Not counted", text(notCounted)],
    ]),
    findings,
  };
}

const KEEPS_FROM_PASSING: ReadonlySet<Outcome> = new Set(["fail", "warn", "undecided", "no-limit-in-force"]);

function leadingOf([first]: readonly FindingRead[]): string {
  return first && KEEPS_FROM_PASSING.has(first.outcome) ? first.message : "";
}

function noted(notes: Entry["notes"]): Entry["notes"] {
  return notes.filter(([, text]) => text !== "");
}

/** @param sheet - place of the sheet in which cells stand that name none */
function findingsRead(data: ReportData, findings: FindingsData, sheet: number | null): readonly FindingRead[] {
  return pairsOf(findings).flatMap(([place, cells]) => {
    const finding = data.findings[place];
    return finding ? [findingRead(data, finding, cells, sheet)] : [];
  });
}

/** Findings with their cells, two by two. */
function pairsOf(findings: FindingsData): readonly (readonly [place: number, cells: string])[] {
  const pairs: [number, string][] = [];
  for (let at = 0; at < findings.length; at += 2) pairs.push([Number(findings[at]), String(findings[at + 1])]);
  return pairs;
}

function findingRead(data: ReportData, finding: FindingData, cells: string, sheet: number | null): FindingRead {
  const [rule, outcome, message, limit, source, remedy, margin, missing, accepted, group, , bases, ...facts] = finding;
  const text = textOf(data);
  const [id, title] = data.rules[rule] ?? [0, 0];
  const spelled = cells.split(";");
  return {
    rule: text(id),
    title: text(title),
    outcome: OUTCOMES[outcome] ?? "undecided",
    message: text(message),
    facts: facts.map((fact, at) => ({ text: text(fact), ...cellsRead(data, spelled[at] ?? "", sheet) })),
    limit: text(limit),
    source: text(source),
    sourceInShort: bases === 0 ? "" : `${text(bases)}; in full at rule ${rule + 1}`,
    margin: text(margin),
    missing: text(missing),
    remedy: text(remedy),
    accepted: text(accepted),
    group: text(group),
  };
}

/** Cells as a spreadsheet program names them, each sheet once ("Pumps!D7, E7, Fans!D7"). */
function cellsRead(data: ReportData, cells: string, own: number | null): Omit<FactRead, "text"> {
  if (cells === "") return { ownSheet: "", cells: "" };
  const text = textOf(data);
  const [first = "", ...others] = cells.split(",");
  const ownSheet = own === null || first.includes("!") ? "" : text(data.sheets[own]);
  let before = ownSheet;
  const read = [first, ...others]
    .map((spelled) => {
      const [first = "", other] = spelled.split("!");
      const place = other === undefined ? own : Number(first);
      const sheet = place === null ? "" : text(data.sheets[place]);
      const cell = other ?? first;
      if (sheet === "" || sheet === before) return cell;
      before = sheet;
      return `${sheet}!${cell}`;
    })
    .join(", ");
  return { ownSheet, cells: read };
}

function textOf(data: ReportData): (place: number | undefined) => string {
  return (place) => textAt(data, place ?? 0);
}
