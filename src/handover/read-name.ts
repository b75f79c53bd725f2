import { didYouMean, dimensionInWords, showText, unitSpelled } from "../base/index.js";
import { CATALOGUE, findFact } from "../facts/index.js";
import { FIELDS } from "./fields.js";
import type { Name } from "./mapping.js";

/** A name, or what is wrong with it. */
export type NameReading =
  | { readonly ok: true; readonly name: Name }
  | { readonly ok: false; readonly code: string; readonly text: string };

/** Reads the name of a field or a fact, as templates and groupings write it; a field comes first. */
export function readName(name: string, unit: string | null): NameReading {
  if (FIELDS[name] !== undefined) {
    if (unit === null) return { ok: true, name: { of: "field", name } };
    return wrong("no-unit", `"${name}" is a field of the results and has no unit; leave "in ${showText(unit)}" out`);
  }
  if (findFact(name)) return readFact(name, unit);
  const known = [...Object.keys(FIELDS), ...CATALOGUE.map(({ id }) => id)];
  const near = didYouMean(name, known) || "; see the schema for the fields, and the catalogue for the facts";
  return wrong("unknown-name", `"${showText(name)}" is no field of the results and no fact${near}`);
}

/** A fact in a unit; its own where none is named. */
export function readFact(id: string, unit: string | null): NameReading {
  if (unit === null) return { ok: true, name: { of: "fact", id, unit: null } };
  const { dimension, unit: own } = findFact(id) ?? {};
  if (dimension === undefined) {
    return wrong("no-unit", `"${id}" is no quantity and has no unit; leave "${showText(unit)}" out`);
  }
  const found = unitSpelled(unit, dimension);
  if (found) return { ok: true, name: { of: "fact", id, unit: found } };
  return wrong("unknown-unit", `"${showText(unit)}" is no unit of ${dimensionInWords(dimension)}, such as ${own}`);
}

function wrong(code: string, text: string): NameReading {
  return { ok: false, code, text };
}
