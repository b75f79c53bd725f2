import type { Dimension, PlainDay, TextPlace } from "../../base/index.js";
import type { FactState, WayAccuracy, WordLists } from "../../facts/index.js";
import type { Group } from "./group.js";
import type { Overlay, SwitchedOff } from "./overlay.js";
import type { Citation, Condition, Rule } from "./rule.js";
import type { ValueTable } from "./table.js";

/** A value of a model in force on [from, until). */
export interface ModelValue {
  readonly from: PlainDay;
  readonly until: PlainDay | null;
  readonly state: FactState;
  readonly cites: readonly string[];
  readonly at: TextPlace;
}

/** A sensor model: its facts (ids with the prefix `model.`) with dated values. */
export interface SensorModel {
  readonly id: string;
  readonly title: string;
  /** Other ways in which surveys write the model. */
  readonly alsoWritten: readonly string[];
  /** An invented model: points that name it are judged by it, and it is never proposed. */
  readonly forExamplesOnly: boolean;
  readonly facts: ReadonlyMap<string, readonly ModelValue[]>;
  readonly citations: ReadonlyMap<string, Citation>;
  readonly at: TextPlace;
}

/** An accuracy in force on [from, until). */
export interface DatedAccuracy extends WayAccuracy {
  readonly from: PlainDay;
  readonly until: PlainDay | null;
}

/** A way of measuring: what it measures and how accurately, with dated values. */
export interface WayOfMeasuring {
  readonly id: string;
  readonly title: string;
  readonly words: readonly string[];
  /** Facts that alone it measures; null where it measures any fact of its quantities. */
  readonly only: readonly string[] | null;
  readonly accuracies: ReadonlyMap<Dimension, readonly DatedAccuracy[]>;
  readonly citations: ReadonlyMap<string, Citation>;
}

/** Where a word of a field stands, by the steps below the field (headings, de, 3); null where it is not known. */
export type PlaceOfWord = (fact: string, steps: readonly (string | number)[]) => TextPlace | null;

/** What is to be known for advising a mounting method. */
export interface MethodChoices {
  /** Methods that are meant to stay, in the order of the file. */
  readonly lasting: readonly string[];
  /** Rules that a method must have been asked, where they concern it, before it is advised as one that would pass. */
  readonly gates: readonly string[];
}

/** A rulebook folder, loaded and checked as a whole. */
export interface Rulebook {
  readonly name: string;
  readonly version: string;
  readonly language: string;
  readonly sets: readonly string[];
  readonly defaultSet: string;
  /** The model by which a survey without any word on models is judged. */
  readonly baselineModel: string;
  /** What is to be known for advising a mounting method; null where the manifest does not say. */
  readonly methods: MethodChoices | null;
  readonly rules: readonly Rule[];
  readonly conditions: ReadonlyMap<string, Condition>;
  readonly models: ReadonlyMap<string, SensorModel>;
  readonly tables: ReadonlyMap<string, ValueTable>;
  readonly groups: ReadonlyMap<string, Group>;
  readonly words: WordLists;
  readonly ways: ReadonlyMap<string, WayOfMeasuring>;
  readonly placeOfWord: PlaceOfWord;
  /** What sites have laid over it, the lowest first. */
  readonly overlays: readonly Overlay[];
  /** Rules that an overlay has switched off; they stand in `rules` no more. */
  readonly switchedOff: readonly SwitchedOff[];
  /** SHA-256 of the canonical JSON (RFC 8785) of all loaded data, overlays included. */
  readonly digest: string;
  /** Fingerprint of the trusted key by which the signature of the rulebook was checked; null where nobody asked. */
  readonly signedBy: string | null;
}

/** A mistake in a file that people write: where, what, and what to do. */
export interface FileFinding extends TextPlace {
  readonly code: string;
  readonly text: string;
}

export type RulebookLoading =
  | { readonly ok: true; readonly rulebook: Rulebook }
  | { readonly ok: false; readonly findings: readonly FileFinding[] };
