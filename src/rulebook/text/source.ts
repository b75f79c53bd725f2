import type { TextPlace } from "../../base/index.js";
import type { FileFinding } from "../book/rulebook.js";

/** Line and column, both from 1. */
export interface Spot {
  readonly line: number;
  readonly column: number;
}

/** Where a value begins, and its key if it has one. */
export interface Spots {
  readonly key: Spot | null;
  readonly value: Spot;
  /** Whether the value is a text that stands without quotes. */
  readonly bareText?: true;
  /** Path of the file, where a change file says it and not the file of the source. */
  readonly file?: string;
}

/** A YAML file as plain data, with the place of every value by JSON pointer. */
export interface Source {
  /** Path as given, for findings. */
  readonly path: string;
  readonly data: unknown;
  readonly spots: ReadonlyMap<string, Spots>;
  /** Where the last change file of an overlay says that it changes this; left out where none does. */
  readonly changedAt?: TextPlace;
}

/** A file as plain data with places, or what keeps it from being read. */
export type YamlReading =
  | { readonly ok: true; readonly source: Source }
  | { readonly ok: false; readonly findings: readonly FileFinding[] };

/** JSON pointer of a key or index below another pointer. */
export function below(pointer: string, ...steps: readonly (string | number)[]): string {
  let result = pointer;
  for (const step of steps) result += `/${String(step).replaceAll("~", "~0").replaceAll("/", "~1")}`;
  return result;
}

/** Gathers findings about one file; the list is shared by all files of a rulebook. */
export class Report {
  readonly #source: Source;
  readonly #findings: FileFinding[];

  /** @param findings - the list to add to */
  constructor(source: Source, findings: FileFinding[]) {
    this.#source = source;
    this.#findings = findings;
  }

  /** Adds a finding at the value that the pointer names, or at the nearest thing around it. */
  atValue(pointer: string, code: string, text: string): void {
    this.#add(this.placeOf(pointer), code, text);
  }

  /** Adds a finding at the key that the pointer names. */
  atKey(pointer: string, code: string, text: string): void {
    this.#add(this.placeOfKey(pointer), code, text);
  }

  /** Where the value begins. */
  placeOf(pointer: string): TextPlace {
    const { file = this.#source.path, value } = this.#spotsAround(pointer);
    return { file, ...value };
  }

  /** Where the key of the value begins; the value itself where it has no key. */
  placeOfKey(pointer: string): TextPlace {
    const { file = this.#source.path, key, value } = this.#spotsAround(pointer);
    return { file, ...(key ?? value) };
  }

  /** Pointers to every text that stands without quotes, in the order of the file. */
  bareTexts(): readonly string[] {
    return [...this.#source.spots].filter(([, spots]) => spots.bareText).map(([pointer]) => pointer);
  }

  /** What was right before a change and is wrong with it, is for the change to mend. */
  #add(place: TextPlace, code: string, text: string): void {
    const { changedAt, path } = this.#source;
    if (changedAt === undefined || place.file !== path) this.#findings.push({ ...place, code, text });
    else {
      const inherited = `inherited from ${place.file}:${place.line}:${place.column}`;
      this.#findings.push({ ...changedAt, code, text: `${text} (${inherited})` });
    }
  }

  #spotsAround(pointer: string): Spots {
    for (let rest = pointer; rest !== ""; rest = rest.slice(0, rest.lastIndexOf("/"))) {
      const spots = this.#source.spots.get(rest);
      if (spots) return spots;
    }
    return this.#source.spots.get("") ?? { key: null, value: { line: 1, column: 1 } };
  }
}
