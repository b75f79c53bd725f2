import type { Stage } from "../../../base/index.js";

/** Everything that a blank survey says in one language. Places in braces are filled in when it is written. */
export interface BlankTexts {
  /** Names of the three sheets; the last one is hidden and holds the words of the drop-down lists. */
  readonly sheets: { readonly survey: string; readonly legend: string; readonly lists: string };
  readonly title: Readonly<Record<Stage, string>>;
  /** Lines under the title. */
  readonly howTo: readonly string[];
  readonly legend: {
    readonly title: string;
    /** Headings of its three columns. */
    readonly columns: readonly [string, string, string];
    /** Behind the heading of a survey column: `{letter}`. */
    readonly place: string;
    readonly examples: string;
    readonly cautions: string;
  };
  /** What a cell takes: `{unit}`, `{lowest}`, `{highest}`, `{words}`. */
  readonly takes: {
    readonly number: string;
    readonly count: string;
    readonly words: string;
    readonly date: string;
    readonly text: string;
  };
  /** Messages of the input checks, with the same places. */
  readonly checks: { readonly title: string; readonly number: string; readonly words: string; readonly date: string };
  /** Behind the advice on a number. */
  readonly notKnown: string;
  /** Where no advice on a field is written. */
  readonly noAdvice: string;
  /** First cell of the hidden sheet. */
  readonly listsTitle: string;
  readonly footer: string;
  readonly yesNo: { readonly yes: string; readonly no: string };
  /** Units that the language spells in its own way, by the unit of the catalogue. */
  readonly units: Readonly<Record<string, string>>;
  /** Listed headings to be preferred to the first one, where that could be misunderstood; by fact id. */
  readonly headings: Readonly<Record<string, string>>;
  /** What is meant and how to find or measure it, in one or two sentences; by fact id. */
  readonly advice: Readonly<Record<string, string>>;
  /** The word for each choice, out of the word lists; by fact id. */
  readonly words: Readonly<Record<string, Readonly<Record<string, string>>>>;
  /** Texts of the example, by fact id. */
  readonly example: Readonly<Record<string, string>>;
  /** The cautions that go with every output, in their order. */
  readonly cautions: readonly string[];
}

/** What a blank survey says of some of its fields. */
export type FieldTexts = Pick<BlankTexts, "advice" | "words">;

/** Puts values into the places of a text. */
export function filled(text: string, values: Readonly<Record<string, string>>): string {
  return text.replace(/\{(\w+)\}/g, (place, name: string) => values[name] ?? place);
}
