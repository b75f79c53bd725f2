import type { PlainDay } from "../../base/index.js";
import { type FactState, factOf } from "../../facts/index.js";
import type { ModelValue, SensorModel } from "../book/rulebook.js";
import type { RawModel } from "../text/raw.js";
import { below, type Report } from "../text/source.js";
import { checkCites, checkDates, inForce, readCitations } from "./dated.js";
import { factValueOf, readScalar } from "./fact-values.js";
import { checkPlausible } from "./plausible.js";

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
      const value = factValueOf(reading.value);
      if (typeof value === "object") checkPlausible(value, definition, where, report);
      const at = report.placeOf(where);
      const origin = { kind: "statement", file: at.file, line: at.line } as const;
      const state: FactState = { known: true, value, origin };
      values.push({ from: entry.from, until: entry.until, state, cites: entry.cites, at });
    }
    facts.set(definition.id, values);
  }
  checkRanges(raw, facts, report);
  checkCites(raw.citations, uses, report);
  return {
    id: raw.id,
    title: raw.title,
    alsoWritten: raw.alsoWritten ?? [],
    forExamplesOnly: raw.forExamplesOnly ?? false,
    facts,
    citations: readCitations(raw.citations),
    at: report.placeOf("/id"),
  };
}

/** Facts named `…_min` and `…_max` are the two ends of one range, on every day on which both hold. */
function checkRanges(raw: RawModel, facts: ReadonlyMap<string, readonly ModelValue[]>, report: Report): void {
  for (const name of Object.keys(raw.facts)) {
    if (!name.endsWith("_max")) continue;
    const other = name.replace(/max$/, "min");
    const lows = facts.get(`model.${other}`) ?? [];
    const highs = facts.get(`model.${name}`) ?? [];
    // A value that could not be read has been reported; the places of those after it would no longer be right.
    if (highs.length !== raw.facts[name]?.length) continue;
    for (const [index, high] of highs.entries()) {
      const low = lows.find((candidate) => overlaps(candidate, high) && !isBelowState(candidate.state, high.state));
      if (!low) continue;
      const text = `"${name}" is not above "${other}" in line ${low.at.line}, which is in force at the same time; check both`;
      report.atValue(below("/facts", name, index, "value"), "range-upside-down", text);
    }
  }
}

function overlaps(a: ModelValue, b: ModelValue): boolean {
  return (a.until === null || b.from < a.until) && (b.until === null || a.from < b.until);
}

function isBelowState(low: FactState, high: FactState): boolean {
  const [a, b] = [low, high].map((state) => (state.known && typeof state.value === "object" ? state.value : null));
  return !a || !b || a.highest < b.lowest;
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
