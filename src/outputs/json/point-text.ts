import type { CellPlace } from "../../base/index.js";
import { type Finding, type PointResult, repeatedBy } from "../../screening/index.js";
import { jsonText } from "./json-text.js";
import { factShape, findingShape, pointShape } from "./shapes.js";

/** Texts kept at most; past it they are made anew, since what comes again comes again soon. */
const MOST_KEPT = 10_000;

/**
 * Makes the JSON of points. The same finding on thousands of points is put into words once; what differs from point
 * to point are the cells.
 *
 * @returns a function that gives the JSON of a point, as `jsonText` gives that of its `pointShape`
 */
export function pointTexts(): (point: PointResult) => string {
  const pieces = new WeakMap<Finding, readonly string[]>();
  const texts = new Map<string, string>();
  const quoted = (text: string | null): string => {
    if (text === null) return "null";
    const known = texts.get(text);
    if (known !== undefined) return known;
    const made = jsonText(text);
    if (texts.size >= MOST_KEPT) texts.clear();
    texts.set(text, made);
    return made;
  };
  const cellsText = (cells: readonly CellPlace[]): string =>
    `[${cells.map(({ sheet, cell }) => `{"sheet":${quoted(sheet)},"cell":"${cell}"}`).join(",")}]`;
  const findingText = (finding: Finding): string => {
    const pattern = repeatedBy(finding);
    let parts = pieces.get(pattern);
    if (!parts) {
      parts = piecesOf(pattern);
      pieces.set(pattern, parts);
    }
    let text = parts[0] ?? "";
    for (const [i, { cells }] of finding.facts.entries()) text += cellsText(cells) + (parts[i + 1] ?? "");
    return text;
  };
  return (point) => {
    const { findings: _, ...rest } = pointShape({ ...point, findings: [] });
    const members = Object.entries(rest).map(([key, value]) => `"${key}":${memberText(value, quoted)}`);
    return `{${members.join(",")},"findings":[${point.findings.map(findingText).join(",")}]}`;
  };
}

function memberText(value: unknown, quoted: (text: string | null) => string): string {
  return typeof value === "string" || value === null ? quoted(value) : jsonText(value);
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
