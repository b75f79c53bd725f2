import { type Overlay, type Rulebook, type SiteWord, type TableRow, wordOfOverlays } from "../rulebook/index.js";

/** One leaf of the data of a rulebook that is another in the newer one; null where it is not there. */
export interface LeafChange {
  /** Steps below the thing that holds it ("limits", "0", "fail", "0", "bound", "value"). */
  readonly path: readonly string[];
  readonly before: unknown;
  readonly after: unknown;
}

/** A rule, model, table, group, named condition or way of measuring that was added, removed or changed. */
export interface ThingChanged {
  readonly kind: "rule" | "model" | "table" | "group" | "condition" | "measuring";
  readonly id: string;
  readonly how: "added" | "removed" | "changed";
  /** Of a changed one. Cases are left out: they prove a rule, they do not make it. */
  readonly leaves: readonly LeafChange[];
  /** Overlays of the newer book that bring it about, with the word of the site; the lowest first. */
  readonly saidBy: readonly SaidBy[];
}

/** What an overlay says of a change. */
export interface SaidBy extends SiteWord {
  readonly overlay: string;
}

/** What no outcome rests on: places in files, and the cases. */
const LEFT_OUT: ReadonlySet<string> = new Set(["at", "cases", "casesGive", "origin"]);

/** What is different between two rulebooks, rule by rule, model by model, table by table, group by group. */
export function rulebookChanges(before: Rulebook, after: Rulebook): readonly ThingChanged[] {
  const rules = (book: Rulebook): ReadonlyMap<string, unknown> => new Map(book.rules.map((rule) => [rule.id, rule]));
  const things = [
    ...thingsChanged("rule", rules(before), rules(after)),
    ...thingsChanged("model", before.models, after.models),
    ...thingsChanged("table", tables(before), tables(after)),
    ...thingsChanged("group", before.groups, after.groups),
    ...thingsChanged("condition", before.conditions, after.conditions),
    ...thingsChanged("measuring", before.ways, after.ways),
  ];
  const known = new Set(before.overlays.map(({ digest }) => digest));
  const overlays = after.overlays.filter(({ digest }) => !known.has(digest));
  return things.map((thing) => ({ ...thing, saidBy: saidBy(thing, overlays, after.switchedOff) }));
}

type Thing = Omit<ThingChanged, "saidBy">;

function saidBy(thing: Thing, overlays: readonly Overlay[], switchedOff: Rulebook["switchedOff"]): readonly SaidBy[] {
  const names = new Set(overlays.map(({ name }) => name));
  const off = switchedOff.filter(
    ({ rule, overlay }) => thing.kind === "rule" && rule === thing.id && names.has(overlay),
  );
  return [...off, ...wordOfOverlays(overlays, thing).changedBy].map(({ overlay, reason, by, on }) => {
    return { overlay, reason, by, on };
  });
}

/** Tables with their rows by the choices that name them, so that a row is told by those and not by its place. */
function tables({ tables: all }: Rulebook): ReadonlyMap<string, unknown> {
  return new Map(
    [...all].map(([id, table]) => [
      id,
      { ...table, entries: table.entries.map((entry) => ({ ...entry, rows: new Map(entry.rows.map(rowByKeys)) })) },
    ]),
  );
}

function rowByKeys({ keys, values }: TableRow): readonly [string, unknown] {
  const plain = [...values].map(([id, value]) => [id, typeof value === "object" && value ? value.lowest : value]);
  return [keys.length === 0 ? "every point" : keys.join(", "), Object.fromEntries(plain)];
}

function thingsChanged(
  kind: ThingChanged["kind"],
  before: ReadonlyMap<string, unknown>,
  after: ReadonlyMap<string, unknown>,
): readonly Thing[] {
  const ids = [...new Set([...before.keys(), ...after.keys()])].sort();
  return ids.flatMap((id): Thing[] => {
    if (!before.has(id)) return [{ kind, id, how: "added", leaves: [] }];
    if (!after.has(id)) return [{ kind, id, how: "removed", leaves: [] }];
    const leaves = leavesChanged(before.get(id), after.get(id), []);
    return leaves.length > 0 ? [{ kind, id, how: "changed", leaves }] : [];
  });
}

function leavesChanged(before: unknown, after: unknown, path: readonly string[]): readonly LeafChange[] {
  const [one, other] = [entriesOf(before), entriesOf(after)];
  // What is not there has no leaves; a part that was added or removed is told leaf by leaf.
  if (one !== null && after === undefined) return leavesChanged(before, new Map(), path);
  if (other !== null && before === undefined) return leavesChanged(new Map(), after, path);
  if (one === null || other === null) {
    return Object.is(before, after) ? [] : [{ path, before: before ?? null, after: after ?? null }];
  }
  const keys = [...new Set([...one.keys(), ...other.keys()])].filter((key) => !LEFT_OUT.has(key));
  return keys.flatMap((key) => leavesChanged(one.get(key), other.get(key), [...path, key]));
}

function entriesOf(value: unknown): ReadonlyMap<string, unknown> | null {
  if (value instanceof Map) return new Map([...value].map(([key, inner]) => [String(key), inner]));
  return typeof value === "object" && value !== null ? new Map(Object.entries(value)) : null;
}
