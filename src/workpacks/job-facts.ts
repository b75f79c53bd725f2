import { type Facts, factName, findFact, plainWords } from "../facts/index.js";
import { type FactShown, type PointResult, showFact } from "../screening/index.js";
import type { AllowedBands } from "./allowed-bands.js";
import type { JobLine, JobValue } from "./pack.js";

/** The facts of one point as the parts of its job ask for them. */
export class JobFacts {
  readonly point: PointResult;
  readonly #facts: Facts;
  readonly #bands: AllowedBands;
  /** Every fact has one plan; instructions and records both ask for its band. */
  readonly #around = new Map<string, JobValue["band"]>();

  constructor(point: PointResult, facts: Facts, bands: AllowedBands) {
    this.point = point;
    this.#facts = facts;
    this.#bands = bands;
  }

  /** A choice by its id, a text, or null where it is not known. */
  word(fact: string): string | null {
    const state = this.#facts.get(fact);
    return state?.known && typeof state.value === "string" ? state.value : null;
  }

  /** A choice or text for a sentence ("drive end"); null where it is not known. */
  words(fact: string): string | null {
    const word = this.word(fact);
    return word !== null && findFact(fact)?.kind === "choice" ? plainWords(word) : word;
  }

  yesNo(fact: string): boolean | null {
    const state = this.#facts.get(fact);
    return state?.known && typeof state.value === "boolean" ? state.value : null;
  }

  /** The middle of a number whose two ends are known; null for others. */
  number(fact: string): number | null {
    const state = this.#facts.get(fact);
    if (!state?.known || typeof state.value !== "object") return null;
    const middle = (state.value.lowest + state.value.highest) / 2;
    return Number.isFinite(middle) ? middle : null;
  }

  isKnown(fact: string): boolean {
    return this.#facts.get(fact)?.known === true;
  }

  /** The value of a fact, known or not, under the name that the catalogue gives it. */
  value(fact: string, name: string = factName(fact)): JobValue {
    return { name, fact: showFact(fact, this.#facts), band: null };
  }

  /** The values of the facts that are known. */
  known(...facts: readonly string[]): readonly JobValue[] {
    return facts.filter((fact) => this.isKnown(fact)).map((fact) => this.value(fact));
  }

  /** A planned value with the band that the rules leave it; of one that is not known there is none. */
  planned(fact: string, name: string = factName(fact)): JobValue {
    return { ...this.value(fact, name), band: this.#bandOf(fact, this.number(fact)) };
  }

  /** A value to be expected of an as-built fact, taken from another fact, with the band of the as-built one. */
  expected(asBuilt: string, plannedBy: string, name: string = factName(plannedBy)): JobValue {
    return { ...this.value(plannedBy, name), band: this.#bandOf(asBuilt, this.number(plannedBy)) };
  }

  /** A value that no survey states and that the trade takes from a table of the program. */
  usual(fact: string, value: number, source: string): JobValue {
    const unit = findFact(fact)?.unit ?? null;
    const shown: FactShown = {
      fact,
      value,
      lowest: value,
      highest: value,
      unit,
      accuracy: null,
      assumed: source,
      cells: [],
      origin: null,
    };
    return { name: factName(fact), fact: shown, band: null };
  }

  #bandOf(fact: string, plan: number | null): JobValue["band"] {
    if (plan === null) return null;
    const known = this.#around.get(fact);
    if (known !== undefined) return known;
    const band = this.#bands.around({ fact, plan }, this.#facts);
    this.#around.set(fact, band);
    return band;
  }
}

/** Something to do. */
export function todo(text: string, ...values: readonly JobValue[]): JobLine {
  return { text, values, hold: false };
}

/** Something that has to be signed off before anybody goes on. */
export function holdUntil(text: string, ...values: readonly JobValue[]): JobLine {
  return { text, values, hold: true };
}
