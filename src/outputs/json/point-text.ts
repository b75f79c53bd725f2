import type { CellPlace } from "../../base/index.js";
import { type Finding, type PointResult, repeatedBy } from "../../screening/index.js";
import { jsonText } from "./json-text.js";
import { factShape, findingShape } from "./shapes.js";
import { type WholeMember, wholeText } from "./whole-text.js";

/** Text that stands in JSON as it is. */
const PLAIN = /^[ !#-[\]-~]*$/;

/** The members of a point in the order in which documents write them; its findings come last. */
const MEMBERS = [
  "id",
  "point",
  "machine",
  "assetTag",
  "component",
  "bearingPosition",
  "direction",
  "file",
  "sheet",
  "row",
  "verdict",
  "accepted",
] as const satisfies readonly (keyof PointResult)[];

/** A member that the contract gains and that is forgotten above does not compile. */
type Forgotten = Exclude<keyof PointResult, (typeof MEMBERS)[number] | WholeMember | "findings">;
const OPENINGS: Forgotten extends never ? readonly string[] : never = MEMBERS.map(
  (member, i) => `${i === 0 ? "{" : ","}"${member}":`,
);

/**
 * Makes the JSON of points. The same finding on thousands of points is put into words once; what differs from point
 * to point are the cells.
 *
 * @returns a function that gives the JSON of one point: every member, null where it has no value
 */
export function pointTexts(): (point: PointResult) => string {
  const pieces = new WeakMap<Finding, readonly string[]>();
  const findingText = (finding: Finding): string => {
    const pattern = repeatedBy(finding);
    let parts = pieces.get(pattern);
    if (!parts) {
      parts = piecesOf(pattern);
      pieces.set(pattern, parts);
    }
    let text = parts[0] ?? "";
    for (let i = 0; i < finding.facts.length; i++) {
      text += cellsText(finding.facts[i]?.cells ?? []) + (parts[i + 1] ?? "");
    }
    return text;
  };
  return (point) => {
    let text = "";
    for (let i = 0; i < MEMBERS.length; i++) text += OPENINGS[i] + memberText(point[MEMBERS[i] ?? "id"]);
    return `${text},${wholeText(point)},"findings":[${point.findings.map(findingText).join(",")}]}`;
  };
}

function memberText(value: string | number | boolean | null): string {
  return typeof value === "string" && PLAIN.test(value) ? `"${value}"` : jsonText(value);
}

function cellsText(cells: readonly CellPlace[]): string {
  return `[${cells.map(({ sheet, cell }) => `{"sheet":${memberText(sheet)},"cell":"${cell}"}`).join(",")}]`;
}

/** The JSON of a finding, cut where the cells of its facts belong. In a text, quotes would be escaped. */
function piecesOf(finding: Finding): readonly string[] {
  const [before = "", after = ""] = jsonText(findingShape({ ...finding, facts: [] })).split('"facts":[]');
  const facts = finding.facts.map((fact) => jsonText(factShape({ ...fact, cells: [] })).split('"cells":[]'));
  let piece = `${before}"facts":[`;
  const pieces: string[] = [];
  for (const [i, [opening = "", closing = ""]] of facts.entries()) {
    pieces.push(`${piece}${i === 0 ? "" : ","}${opening}"cells":`);
    piece = closing;
  }
  return [...pieces, `${piece}]${after}`];
}
