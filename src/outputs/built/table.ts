import type { BuiltHead, BuiltPoint } from "../../built/index.js";
import { factName } from "../../facts/index.js";
import { CAUTION_OF_A_ROW } from "../../screening/index.js";
import { csvRecord, type Field } from "../csv/record.js";
import { safeText } from "../csv/safe-text.js";
import { overlaysNamed } from "../wording/overlays.js";
import { differenceInWords, partnerInWords, rowsInWords, turnedInWords, worseRules } from "./words.js";

type Columns = readonly (readonly [heading: string, field: (point: BuiltPoint) => Field])[];

function yesNo(value: boolean): string {
  return value ? "yes" : "no";
}

function columnsFor(head: BuiltHead): Columns {
  const { rulebook, asOf, set, site } = head.built;
  const listed = (facts: readonly string[]): string => facts.map(factName).join("; ");
  return [
    ["point id", (point) => point.id],
    ["point", (point) => point.point],
    ["machine", (point) => point.machine],
    ["component", (point) => point.component],
    ["bearing position", (point) => point.bearingPosition],
    ["direction", (point) => point.direction],
    ["site", () => site.name],
    ["status", (point) => point.status],
    ["verdict then", (point) => point.verdictThen],
    ["verdict now", (point) => point.verdictNow],
    ["change", (point) => point.change],
    ["recall", (point) => yesNo(point.recall)],
    ["only not recorded", (point) => yesNo(point.onlyUndecided)],
    ["built against the verdict", (point) => yesNo(point.againstVerdict)],
    ["needs a new verdict", (point) => yesNo(point.needsNewVerdict)],
    [
      "rules that are worse",
      (point) =>
        worseRules(point)
          .map(({ rule }) => rule)
          .join("; "),
    ],
    ["reasons", (point) => worseRules(point).map(turnedInWords).join("; ")],
    ["remedies", (point) => [...new Set(worseRules(point).flatMap(({ now }) => now?.remedy ?? []))].join("; ")],
    ["differences", (point) => point.differences.map(differenceInWords).join("; ")],
    ["to be measured anew", (point) => listed(point.notCarried)],
    ["taken from the proposal", (point) => listed(point.carried)],
    ["likely the same point", (point) => point.likely.map(partnerInWords).join("; ")],
    ["remark", (point) => point.text],
    ["proposed in", (point) => rowsInWords(point.proposed)],
    ["built in", (point) => rowsInWords(point.built)],
    ["rulebook", () => rulebook.name],
    ["rulebook version", () => rulebook.version],
    ["rulebook digest", () => rulebook.digest],
    ["overlays", () => overlaysNamed(rulebook)],
    ["as of", () => asOf],
    ["set", () => set],
    ["issued under", () => head.issued?.run ?? head.proposed.digest],
    ["digest", () => head.digest],
    ["caution", () => CAUTION_OF_A_ROW],
  ];
}

/**
 * A table for people with one row per point, in the order of the document. RFC 4180: UTF-8, comma, CRLF, decimal
 * point. Text that a spreadsheet program could take for a formula has an apostrophe in front.
 *
 * @returns one record per piece, the headings first
 */
export function* builtCsv(head: BuiltHead, points: Iterable<BuiltPoint>): IterableIterator<string> {
  const columns = columnsFor(head);
  yield csvRecord(columns.map(([heading]) => heading));
  for (const point of points) {
    yield csvRecord(
      columns.map(([, field]) => {
        const content = field(point);
        return typeof content === "string" ? safeText(content) : content;
      }),
    );
  }
}
