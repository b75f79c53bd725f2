import { convert, type Interval } from "../base/index.js";
import { type FactState, factName, findFact, plainWords } from "../facts/index.js";
import { FIELDS } from "./fields.js";
import type { Column, DayPattern, FileForm, Name } from "./mapping.js";
import { dayInWriting, numberInWriting } from "./writing.js";

/** What stands under a name for one row. */
export type Found =
  | { readonly kind: "text" | "choice"; readonly text: string }
  | { readonly kind: "date"; readonly day: string }
  | { readonly kind: "yes-no"; readonly yes: boolean }
  | { readonly kind: "number"; readonly value: Interval; readonly accuracy: number | null };

/** What was found under a name; `remark` says why nothing was, where that is more than that nobody wrote it down. */
export type Looked =
  | { readonly ok: true; readonly found: Found | null; readonly remark?: string }
  | { readonly ok: false; readonly text: string };

/** Looks names up for one row. */
export type Lookup = (name: Name) => Looked;

/** A name as a mapping writes it. */
export function nameInMapping(name: Name): string {
  return name.of === "field" ? name.name : name.unit === null ? name.id : `${name.id} in ${name.unit.id}`;
}

/** A name for people. */
export function nameInWords(name: Name): string {
  return name.of === "field"
    ? plainWords(name.name.replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`))
    : factName(name.id);
}

const UNKNOWN: Readonly<Record<string, string>> = {
  doubtful: "is in doubt",
  unreadable: "cannot be read",
  conflicting: "contradicts itself",
  "too-close": "is too close to a limit",
};

/** What a fact comes to in a unit. */
export function foundOfFact(id: string, unit: string | null, state: FactState | undefined): Looked {
  if (!state?.known) {
    const why = UNKNOWN[state?.reason ?? "missing"];
    return why === undefined ? { ok: true, found: null } : { ok: true, found: null, remark: `${factName(id)} ${why}` };
  }
  const { value } = state;
  const definition = findFact(id);
  if (typeof value === "boolean") return { ok: true, found: { kind: "yes-no", yes: value } };
  if (typeof value === "string") {
    if (definition?.kind === "date") return { ok: true, found: { kind: "date", day: value } };
    return { ok: true, found: { kind: definition?.kind === "choice" ? "choice" : "text", text: value } };
  }
  const { dimension, unit: own } = definition ?? {};
  const turned = (number: number): number =>
    unit === null || own === undefined || dimension === undefined || !Number.isFinite(number)
      ? number
      : convert(number, own, unit, dimension);
  const ends = [turned(value.lowest), turned(value.highest)] as const;
  const interval = { lowest: Math.min(...ends), highest: Math.max(...ends) };
  return { ok: true, found: { kind: "number", value: interval, accuracy: state.accuracy ?? null } };
}

/** What a field of results comes to; an empty text is nothing. */
export function foundOfField(name: string, value: string | number | boolean | null): Found | null {
  if (value === null || value === "") return null;
  if (typeof value === "boolean") return { kind: "yes-no", yes: value };
  if (typeof value === "number") return { kind: "number", value: { lowest: value, highest: value }, accuracy: null };
  const kind = FIELDS[name]?.kind;
  if (kind === "date") return { kind: "date", day: value };
  return { kind: kind === "choice" ? "choice" : "text", text: value };
}

/** The one number that is to be written; null where there is none. */
export function numberOf(found: Extract<Found, { kind: "number" }>, takes: Column["takes"]): number | null {
  const { lowest, highest } = found.value;
  if (takes !== "value") return Number.isFinite(found.value[takes]) ? found.value[takes] : null;
  if (lowest === highest) return lowest;
  // A number with a stated accuracy lies in the middle; two values that differ are not one.
  return found.accuracy !== null && Number.isFinite(lowest + highest) ? (lowest + highest) / 2 : null;
}

/** The word by which a list of values knows it. */
export function plainWord(found: Found): string {
  switch (found.kind) {
    case "yes-no":
      return found.yes ? "yes" : "no";
    case "date":
      return found.day;
    case "number": {
      const number = numberOf(found, "value");
      return number === null ? "" : numberInWriting(number, null, "point");
    }
    default:
      return found.text;
  }
}

/** As it stands within a text. A number that is not one single value is written with both ends. */
export function foundInText(found: Found, form: Pick<FileForm, "decimalSign">, days: DayPattern): string {
  if (found.kind === "choice") return plainWords(found.text);
  if (found.kind === "date") return dayInWriting(found.day, days);
  if (found.kind !== "number") return plainWord(found);
  const written = (number: number): string => numberInWriting(number, null, form.decimalSign);
  const number = numberOf(found, "value");
  const { lowest, highest } = found.value;
  if (number !== null) return written(number);
  if (lowest === Number.NEGATIVE_INFINITY) return `at most ${written(highest)}`;
  if (highest === Number.POSITIVE_INFINITY) return `at least ${written(lowest)}`;
  return `${written(lowest)} to ${written(highest)}`;
}
