import { type PointResult, plainName, uuidOfNames } from "../screening/index.js";
import { type Lookup, nameInMapping, nameInWords, plainWord } from "./found.js";
import { groupLookup } from "./group-lookup.js";
import type { MappedRow } from "./mapped.js";
import type { Column, Name, Target } from "./mapping.js";
import type { Gathered, MappingProblem, MappingRemark } from "./problems.js";
import { namesIn } from "./template.js";
import { type RowLookups, writeColumn } from "./write-value.js";

/** A row with the name by which people know it, and its keys as they are written. */
export interface NamedRow {
  readonly row: MappedRow;
  readonly name: string;
}

export interface Gathering {
  readonly problems: Gathered<MappingProblem>;
  readonly remarks: Gathered<MappingRemark>;
}

interface GroupOfPoints {
  readonly name: string;
  readonly id: string;
  readonly points: { readonly id: string; readonly name: string; readonly lookup: Lookup }[];
}

/** Different texts that are remembered; beyond that rows have little in common. */
const MOST_TEXTS = 100_000;

const SITE: Name = { of: "field", name: "site" };

/** Makes the rows of one target from the points that it takes, one after the other. */
export class RowMaker {
  readonly #target: Target;
  readonly #run: Lookup;
  readonly #gathering: Gathering;
  readonly #names: readonly Name[];
  readonly #rows: NamedRow[] = [];
  readonly #groups = new Map<string, GroupOfPoints>();
  readonly #texts = new Map<string, string>();

  /** @param run - looks up what all rows share */
  constructor(target: Target, run: Lookup, gathering: Gathering) {
    this.#target = target;
    this.#run = run;
    this.#gathering = gathering;
    this.#names = [...target.columns.flatMap(namesOf), { of: "field", name: "verdict" }];
  }

  /** Takes a point into a row. */
  take(point: PointResult, lookup: Lookup): void {
    const name = nameOfPoint(point);
    if (point.id === null) {
      const text =
        "the row says too little for an id, so it could not be found again; name its point, or filter such points";
      this.#problem(null, name, "no-id", text);
      return;
    }
    const { rows } = this.#target;
    if (!("per" in rows)) {
      this.#rows.push({
        name,
        row: this.#fill(point.id, [point.id], name, { row: lookup, points: [{ name, lookup }] }),
      });
      return;
    }
    const key = this.#keyOf(rows.one, rows.per, name, lookup);
    if (key === null) return;
    const group = this.#groups.get(key.id) ?? { ...key, points: [] };
    group.points.push({ id: point.id, name, lookup: remembered(lookup, this.#names) });
    this.#groups.set(key.id, group);
  }

  /** All rows, when all points have been taken; in the order of their keys, else of their ids. */
  rows(): readonly NamedRow[] {
    for (const { id, name, points } of this.#groups.values()) {
      // By name, so that the order of the sheets does not matter.
      points.sort((a, b) => compare(a.name, b.name) || compare(a.id, b.id));
      const row = groupLookup({ id, run: this.#run, points });
      const lookups = { row, points };
      this.#rows.push({
        name,
        row: this.#fill(
          id,
          points.map((point) => point.id),
          name,
          lookups,
        ),
      });
    }
    this.#groups.clear();
    const keys = this.#target.columns.flatMap(({ key }, place) => (key ? [place] : []));
    const byKeys = (a: MappedRow, b: MappedRow): number => {
      for (const place of keys) {
        const order = compare(a.values[place] ?? "", b.values[place] ?? "");
        if (order !== 0) return order;
      }
      return compare(a.id, b.id);
    };
    return this.#rows.sort((a, b) => byKeys(a.row, b.row));
  }

  #fill(id: string, points: readonly string[], of: string, lookups: RowLookups): MappedRow {
    const { columns, form, id: target } = this.#target;
    const values = columns.map((column) => {
      const { value, refused, remarks } = writeColumn(column, form, lookups);
      for (const { code, text } of refused) this.#problem(column.heading, of, code, text);
      for (const text of remarks) this.#gathering.remarks.add({ target, column: column.heading, of, text });
      return value === null ? null : this.#once(value);
    });
    return { id, points, values };
  }

  /** Thousands of rows say few different things; each is kept once. */
  #once(text: string): string {
    const known = this.#texts.get(text);
    if (known !== undefined) return known;
    if (this.#texts.size < MOST_TEXTS) this.#texts.set(text, text);
    return text;
  }

  #keyOf(
    one: string,
    per: Extract<Target["rows"], { per: unknown }>["per"],
    of: string,
    lookup: Lookup,
  ): { readonly id: string; readonly name: string } | null {
    const key = keyOfRow(one, per, lookup);
    if (key.ok) return key;
    const text = `the ${nameInWords(key.empty)} is not known, and there is one ${one} for each; find it out, filter such points, or say "whenEmpty: together"`;
    this.#problem(null, of, "no-group", text);
    return null;
  }

  #problem(column: string | null, of: string, code: string, text: string): void {
    this.#gathering.problems.add({ target: this.#target.id, column, of, code, text });
  }
}

/**
 * What a row of several points is called, and its id: the UUID of site, the word for what it is, and each thing that it
 * is grouped by with its value. So it is the same for every order of rows and files, and in every target that
 * groups alike.
 */
export function keyOfRow(
  one: string,
  per: Extract<Target["rows"], { per: unknown }>["per"],
  lookup: Lookup,
): { readonly ok: true; readonly id: string; readonly name: string } | { readonly ok: false; readonly empty: Name } {
  const parts: string[] = [];
  const words: string[] = [];
  for (const { name, whenEmpty } of per) {
    const looked = lookup(name);
    const value = looked.ok && looked.found !== null ? plainName(plainWord(looked.found)) : "";
    if (value === "" && whenEmpty === "stop") return { ok: false, empty: name };
    parts.push(`${nameInMapping(name)}=${value}`);
    words.push(value === "" ? `${nameInWords(name)} not known` : value);
  }
  const site = lookup(SITE);
  const siteName = site.ok && site.found !== null ? plainWord(site.found) : "";
  return { ok: true, id: uuidOfNames([siteName, one, ...parts]), name: `${one} ${words.join(", ")}` };
}

/** A point with its place in the survey. */
export function nameOfPoint({ point, file, sheet, row }: PointResult): string {
  const place = sheet === null ? `${file}, line ${row}` : `${file} > ${sheet}, row ${row}`;
  return point === null ? place : `${point} (${place})`;
}

/** Every name that a column looks up. */
export function namesOf({ source }: Column): readonly Name[] {
  if (source.from === "name") return [source.name];
  return source.from === "constant" ? [] : namesIn(source.template);
}

/** What is found under these names now, so that the facts behind it need not be kept. */
function remembered(lookup: Lookup, names: readonly Name[]): Lookup {
  const known = new Map(names.map((name) => [nameInMapping(name), lookup(name)]));
  return (name) => known.get(nameInMapping(name)) ?? { ok: true, found: null };
}

/** By code units, the same on every machine. */
function compare(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
