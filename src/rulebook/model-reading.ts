import type { PlainDay } from "../base/index.js";
import { type FactState, factOf } from "../facts/index.js";
import { checkCites, checkDates, inForce, readCitations } from "./dated.js";
import { factValueOf, readScalar } from "./fact-values.js";
import type { RawModel } from "./raw.js";
import type { ModelValue, SensorModel } from "./rulebook.js";
import { below, type Report } from "./source.js";

/**
 * Checks what one model file means, its form being checked already.
 *
 * @returns the model; of use only if nothing was reported
 */
export function readModel(raw: RawModel, report: Report): SensorModel {
  const facts = new Map<string, readonly ModelValue[]>();
  const uses: { pointer: string; cites: readonly string[] }[] = [];
  for (const [name, entries] of Object.entries(raw.facts)) {
    const definition = factOf(`model.${name}`);
    const pointer = below("/facts", name);
    checkDates(entries, pointer, report);
    const values: ModelValue[] = [];
    for (const [index, entry] of entries.entries()) {
      uses.push({ pointer: below(pointer, index, "cites"), cites: entry.cites });
      const where = below(pointer, index, "value");
      const reading = readScalar(entry.value, definition);
      if (!reading.ok) {
        report.atValue(where, reading.mistake.code, reading.mistake.text);
        continue;
      }
      const at = report.placeOf(where);
      const origin = { kind: "statement", file: at.file, line: at.line } as const;
      const state: FactState = { known: true, value: factValueOf(reading.value), origin };
      values.push({ from: entry.from, until: entry.until, state, cites: entry.cites, at });
    }
    facts.set(definition.id, values);
  }
  checkCites(raw.citations, uses, report);
  return {
    id: raw.id,
    title: raw.title,
    alsoWritten: raw.alsoWritten ?? [],
    facts,
    citations: readCitations(raw.citations),
    at: report.placeOf("/id"),
  };
}

/** The values of a model in force on a day, by fact id; a fact without one is not in the map. */
export function modelFactsOn(model: SensorModel, day: PlainDay): ReadonlyMap<string, FactState> {
  const facts = new Map<string, FactState>();
  for (const [id, values] of model.facts) {
    const value = values.find((candidate) => inForce(candidate, day));
    if (value) facts.set(id, value.state);
  }
  return facts;
}
