import { showText } from "../base/index.js";
import { FIELDS } from "./fields.js";
import { type Found, foundInText, type Lookup, nameInWords, plainWord } from "./found.js";
import type { PointLookup } from "./write-value.js";

const GRAVITY = ["pass", "warn", "fail"];

/** What a row of several points knows of itself. */
export interface GroupLookup {
  /** Null where it could not be made. */
  readonly id: string | null;
  readonly run: Lookup;
  /** In the order of their names; what is asked of the row must be the same for all. */
  readonly points: readonly PointLookup[];
}

/** Looks up what is known of a row of several points: what is not its own must be the same for all of them. */
export function groupLookup({ id, run, points }: GroupLookup): Lookup {
  return (name) => {
    if (name.of === "field" && FIELDS[name.name]?.of === "run") return run(name);
    if (name.of === "field" && FIELDS[name.name]?.of === "row") {
      return { ok: true, found: ofRow(name.name, id, points) };
    }
    let first: { readonly found: Found | null; readonly point: string } | null = null;
    for (const point of points) {
      const looked = point.lookup(name);
      if (!looked.ok) return looked;
      if (first === null) first = { found: looked.found, point: point.name };
      else if (sameness(first.found) !== sameness(looked.found)) {
        const text = `the ${nameInWords(name)} is ${shown(first.found)} at ${first.point} and ${shown(looked.found)} at ${point.name}; group by it, or write it for each point`;
        return { ok: false, text };
      }
    }
    return { ok: true, found: first?.found ?? null };
  };
}

function ofRow(name: string, id: string | null, points: GroupLookup["points"]): Found | null {
  if (name === "points")
    return { kind: "number", value: { lowest: points.length, highest: points.length }, accuracy: null };
  if (name === "id") return id === null ? null : { kind: "text", text: id };
  const verdicts = points.flatMap(({ lookup }) => {
    const looked = lookup({ of: "field", name: "verdict" });
    return looked.ok && looked.found ? [plainWord(looked.found)] : [];
  });
  const worst = verdicts.sort((a, b) => GRAVITY.indexOf(b) - GRAVITY.indexOf(a))[0];
  return worst === undefined ? null : { kind: "choice", text: worst };
}

function sameness(found: Found | null): string {
  if (found === null) return "";
  return found.kind === "number" ? `${found.value.lowest} ${found.value.highest}` : plainWord(found);
}

function shown(found: Found | null): string {
  return found === null ? "not known" : `"${showText(foundInText(found, { decimalSign: "point" }, "YYYY-MM-DD"))}"`;
}
