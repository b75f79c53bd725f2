import type { WithdrawnWord } from "./mapped.js";
import type { Column, FileForm, Length, WhenEmpty } from "./mapping.js";

/** A mapping file as its schema lets it through: form checked, meaning not yet. */
export interface RawMapping {
  readonly mapping: string;
  readonly version: string;
  readonly title: string;
  readonly form?: RawForm;
  readonly targets: readonly RawTarget[];
  readonly checks?: readonly RawCheck[];
}

export type RawForm = Partial<Omit<FileForm, "kind">>;

export interface RawTarget {
  readonly target: string;
  readonly file?: string;
  readonly rows?: "point" | { readonly one: string; readonly per: readonly (string | RawPer)[] };
  readonly where?: RawFilter;
  readonly rowLimit?: number;
  readonly form?: RawForm;
  readonly withdrawn?: WithdrawnWord;
  readonly columns: readonly RawColumn[];
}

export interface RawPer {
  readonly by: string;
  readonly whenEmpty?: "stop" | "together";
}

export interface RawFilter {
  readonly verdicts?: readonly string[];
  readonly released?: true;
  readonly rulesSay?: Readonly<Record<string, readonly string[]>>;
  readonly rulesDoNotSay?: Readonly<Record<string, readonly string[]>>;
  readonly facts?: Readonly<Record<string, readonly (string | boolean)[]>>;
}

export interface RawColumn {
  readonly heading: string;
  readonly field?: string;
  readonly fact?: string;
  readonly unit?: string;
  readonly constant?: string;
  readonly template?: string;
  readonly each?: string;
  readonly join?: string;
  readonly type?: Column["type"];
  readonly key?: boolean;
  readonly required?: boolean;
  readonly values?: Readonly<Record<string, string>>;
  readonly otherwise?: "stop";
  readonly length?: Omit<Length, "mark"> & { readonly mark?: string };
  readonly characters?: readonly string[];
  readonly lines?: "one" | "many";
  readonly whenEmpty?: WhenEmpty;
  readonly days?: Column["days"];
  readonly decimals?: number;
  readonly takes?: Column["takes"];
  readonly references?: string;
}

export type RawGiven = Readonly<Record<string, unknown>>;

export interface RawCheck {
  readonly name: string;
  readonly target: string;
  readonly given: RawGiven | readonly RawGiven[];
  readonly expect?: Readonly<Record<string, string | null>>;
  readonly refuses?: readonly string[];
}
