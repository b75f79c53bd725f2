import type { Outcome } from "../../base/index.js";
import { isOpen } from "../../base/index.js";
import { factName } from "../../facts/index.js";
import {
  type Accepted,
  CAUTION_OF_A_ROW,
  type Finding,
  type PointResult,
  type ResultHead,
} from "../../screening/index.js";
import { gravestFirst } from "../findings/leading.js";
import { missingOf, reasonOf, remedyOf, sourceOf } from "../findings/reasons.js";
import { indexRules, type RuleIndex } from "../findings/rule-index.js";
import { changeInWords, factValueInWords, limitInWords } from "../wording/facts.js";
import { otherMethodInWords } from "../wording/methods.js";
import { overlaysNamed } from "../wording/overlays.js";
import { csvRecord, type Field } from "./record.js";
import { safeText } from "./safe-text.js";

/** One column: its heading and what stands in it. */
type Columns<T> = readonly (readonly [heading: string, field: (row: T) => Field])[];

/** What a row of the table of points is made of. */
interface PointRow {
  readonly point: PointResult;
  readonly grave: readonly Finding[];
  readonly leading: Finding | null;
}

/** What a row of the table of findings is made of. */
interface FindingRow {
  readonly point: PointResult;
  readonly finding: Finding;
}

function placeColumns<T extends { readonly point: PointResult }>(head: ResultHead): Columns<T> {
  const digests = new Map(head.surveys.map((survey) => [survey.file, survey.digest]));
  return [
    ["point id", (row) => row.point.id],
    ["point", (row) => row.point.point],
    ["machine", (row) => row.point.machine],
    ["asset tag", (row) => row.point.assetTag],
    ["component", (row) => row.point.component],
    ["bearing position", (row) => row.point.bearingPosition],
    ["direction", (row) => row.point.direction],
    ["site", () => head.site.name],
    ["survey file", (row) => row.point.file],
    ["sheet", (row) => row.point.sheet],
    ["row", (row) => row.point.row],
    ["survey digest", (row) => digests.get(row.point.file) ?? null],
  ];
}

function runColumns<T>(head: ResultHead): Columns<T> {
  return [
    ["rulebook", () => head.rulebook.name],
    ["rulebook version", () => head.rulebook.version],
    ["rulebook digest", () => head.rulebook.digest],
    ["overlays", () => overlaysNamed(head.rulebook)],
    ["as of", () => head.asOf],
    ["stage", () => head.stage],
    ["set", () => head.set],
    ["caution", () => CAUTION_OF_A_ROW],
  ];
}

function pointColumns(head: ResultHead, rules: RuleIndex): Columns<PointRow> {
  const ofLeading = (word: (finding: Finding) => Field) => (row: PointRow) => row.leading && word(row.leading);
  const number = (fits: (outcome: Outcome) => boolean) => (row: PointRow) =>
    row.grave.filter((finding) => fits(finding.outcome)).length;
  return [
    ...placeColumns<PointRow>(head),
    ["verdict", (row) => row.point.verdict],
    ["leading rule", ofLeading((finding) => finding.rule)],
    ["outcome", ofLeading((finding) => finding.outcome)],
    ["reason", ofLeading((finding) => reasonOf(finding, rules))],
    ["remedy", ofLeading((finding) => remedyOf(finding, rules))],
    ["missing facts", (row) => missingOf(row.grave)],
    ["source", ofLeading((finding) => sourceOf(finding, rules))],
    ["rules failed", number((outcome) => outcome === "fail")],
    ["rules warned", number((outcome) => outcome === "warn")],
    ["rules undecided", number(isOpen)],
    ["another method", (row) => otherMethodInWords(row.point)],
    ["settled by", (row) => row.point.settledBy?.map(factName).join(", ") ?? null],
    ...acceptedColumns<PointRow>(
      ({ point }) => (point.accepted ? "yes" : acceptedOf(point).length > 0 ? "in part" : null),
      ({ point }) => acceptedOf(point),
    ),
    ...runColumns<PointRow>(head),
  ];
}

function findingColumns(head: ResultHead, rules: RuleIndex): Columns<FindingRow> {
  return [
    ...placeColumns<FindingRow>(head),
    ["verdict of the point", (row) => row.point.verdict],
    ["rule", (row) => row.finding.rule],
    ["rule title", (row) => rules.title(row.finding.rule)],
    ["outcome", (row) => row.finding.outcome],
    ["at best", (row) => row.finding.atBest],
    ["found", (row) => (row.finding.facts[0] ? factValueInWords(row.finding.facts[0]) : null)],
    ["limit", (row) => row.finding.limit && limitInWords(row.finding.limit)],
    ["margin", (row) => finite(row.finding.margin?.value)],
    ["margin unit", (row) => (row.finding.margin && row.finding.limit?.unit) ?? null],
    ["reason", (row) => reasonOf(row.finding, rules)],
    ["remedy", (row) => remedyOf(row.finding, rules)],
    ["changes", (row) => row.finding.changes.map(changeInWords).join("; ")],
    ["missing facts", (row) => missingOf([row.finding])],
    ["cells", (row) => row.finding.facts[0]?.cells.map((place) => place.cell).join(" ") ?? null],
    ["group", (row) => row.finding.group],
    ["source", (row) => sourceOf(row.finding, rules)],
    ...acceptedColumns<FindingRow>(
      ({ finding }) => (finding.accepted === null ? null : "yes"),
      ({ finding: { accepted } }) => (accepted === null ? [] : [accepted]),
    ),
    ...runColumns<FindingRow>(head),
  ];
}

function acceptedOf({ findings }: PointResult): readonly Accepted[] {
  return findings.flatMap(({ accepted }) => (accepted === null ? [] : [accepted]));
}

/** What is accepted, by whom, until the day on which the first of it ends, and why. */
function acceptedColumns<T>(isAccepted: (row: T) => string | null, of: (row: T) => readonly Accepted[]): Columns<T> {
  const each = (row: T, word: (accepted: Accepted) => string): string | null =>
    [...new Set(of(row).map(word))].join("; ") || null;
  return [
    ["accepted", isAccepted],
    ["accepted by", (row) => each(row, ({ acceptedBy }) => acceptedBy)],
    [
      "accepted until",
      (row) =>
        of(row)
          .map(({ until }) => until)
          .sort()[0] ?? null,
    ],
    ["accepted because", (row) => each(row, ({ reason }) => reason)],
  ];
}

function finite(value: number | undefined): number | null {
  return value !== undefined && Number.isFinite(value) ? value : null;
}

function headings<T>(columns: Columns<T>): string {
  return csvRecord(columns.map(([heading]) => heading));
}

function record<T>(columns: Columns<T>, row: T): string {
  return csvRecord(
    columns.map(([, field]) => {
      const content = field(row);
      return typeof content === "string" ? safeText(content) : content;
    }),
  );
}

/**
 * A table for people with one row per point, in the order of files, sheets and rows. RFC 4180: UTF-8, comma, CRLF,
 * decimal point. Text that a spreadsheet program could take for a formula has an apostrophe in front.
 *
 * @returns one record per piece, the headings first
 */
export function* pointsCsv(head: ResultHead, points: Iterable<PointResult>): IterableIterator<string> {
  const rules = indexRules(head);
  const columns = pointColumns(head, rules);
  yield headings(columns);
  for (const point of points) {
    const grave = gravestFirst(point.findings, rules);
    yield record(columns, { point, grave, leading: grave[0] ?? null });
  }
}

/**
 * The table that goes with `pointsCsv`: one row per finding that keeps its point from passing, the gravest of each
 * point first.
 */
export function* findingsCsv(head: ResultHead, points: Iterable<PointResult>): IterableIterator<string> {
  const rules = indexRules(head);
  const columns = findingColumns(head, rules);
  yield headings(columns);
  for (const point of points) {
    for (const finding of gravestFirst(point.findings, rules)) yield record(columns, { point, finding });
  }
}
