import { type PlainDay, showText } from "../../base/index.js";
import type { PointRecord } from "../../records/index.js";
import type { Deviation, Deviations, FileFinding } from "../../rulebook/index.js";
import { namesOf, plainName } from "../identity.js";
import type { PointOnItsWay } from "../point-facts.js";
import { rowInWords } from "../point-twice.js";
import type { Finding } from "../result.js";
import { withAccepted } from "./covering.js";

/** Points named in a message; the rest are counted. */
const POINTS_SHOWN = 3;

const UUID = /^[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;

/** Deviations that do not say clearly what they speak of in this run; nothing is judged then. */
export class UnclearDeviations extends Error {
  readonly findings: readonly FileFinding[];

  constructor(findings: readonly FileFinding[]) {
    super(findings.map(({ file, line, text }) => `${file}:${line}: ${text}`).join("\n"));
    this.findings = findings;
  }
}

/** A row that a deviation speaks of. */
export interface RowMeant {
  readonly point: PointOnItsWay;
  readonly id: string | null;
}

/** Finds the points that deviations speak of, by id or by name, and marks what is accepted on them. */
export class DeviationsOnPoints {
  readonly deviations: Deviations;
  readonly #asOf: PlainDay;
  readonly #byWritten = new Map<string, Deviation[]>();
  readonly #rows = new Map<Deviation, RowMeant[]>();
  readonly #ofRecord = new Map<PointRecord, Deviation[]>();

  constructor(deviations: Deviations, asOf: PlainDay) {
    this.deviations = deviations;
    this.#asOf = asOf;
    for (const entry of deviations.entries) {
      const key = keyOf(entry.point);
      this.#byWritten.set(key, [...(this.#byWritten.get(key) ?? []), entry]);
    }
  }

  /** Takes note of a point of the run. */
  add(point: PointOnItsWay, id: string | null): void {
    const { point: name } = namesOf(point.facts);
    const keys = new Set([id, name].flatMap((written) => (written === null ? [] : [keyOf(written)])));
    for (const entry of [...keys].flatMap((key) => this.#byWritten.get(key) ?? [])) {
      this.#rows.set(entry, [...this.rowsOf(entry), { point, id }]);
      this.#ofRecord.set(point.record, [...(this.#ofRecord.get(point.record) ?? []), entry]);
    }
  }

  /** The rows of the run that a deviation speaks of: none, one, or those that share the id of a point. */
  rowsOf(entry: Deviation): readonly RowMeant[] {
    return this.#rows.get(entry) ?? [];
  }

  /** The deviation from the same rule at the same point that begins when this one ends. */
  followerOf(entry: Deviation): Deviation | null {
    const [row] = this.rowsOf(entry);
    const others = row ? (this.#ofRecord.get(row.point.record) ?? []) : [];
    return others.find((one) => one.rule === entry.rule && one.from === entry.until) ?? null;
  }

  /** Marks what is accepted on a point. */
  mark(record: PointRecord, findings: readonly Finding[]): readonly Finding[] {
    const entries = this.#ofRecord.get(record);
    return entries ? withAccepted(findings, entries, this.#asOf) : findings;
  }

  /**
   * To be asked once all points have been added.
   *
   * @throws UnclearDeviations if a name is that of several points, or if two deviations accept the same on one day
   */
  checkClear(): void {
    const findings = this.deviations.entries.flatMap((entry) => [
      ...this.#nameOfSeveral(entry),
      ...this.#acceptedTwice(entry),
    ]);
    if (findings.length > 0) throw new UnclearDeviations(findings);
  }

  #nameOfSeveral(entry: Deviation): readonly FileFinding[] {
    const rows = this.rowsOf(entry);
    const points = new Map(rows.map((row) => [row.id ?? rowInWords(row.point.record), row]));
    if (points.size < 2) return [];
    const shown = [...points].slice(0, POINTS_SHOWN).map(([id, { point }]) => `${id} (${rowInWords(point.record)})`);
    const more = points.size > POINTS_SHOWN ? ` and ${points.size - POINTS_SHOWN} more` : "";
    const text = `"${showText(entry.point)}" is the name of ${points.size} points; write the id of the one that is meant: ${shown.join(", ")}${more}`;
    return [{ ...entry.at, code: "name-of-several", text }];
  }

  /** Id and name of one point; what is written alike is found when the file is read. */
  #acceptedTwice(entry: Deviation): readonly FileFinding[] {
    const others = this.rowsOf(entry).flatMap(({ point }) => this.#ofRecord.get(point.record) ?? []);
    const other = others.find(
      (one) =>
        one.rule === entry.rule && one.at.line < entry.at.line && one.from < entry.until && entry.from < one.until,
    );
    if (!other) return [];
    const text = `line ${other.at.line} accepts the same for the same point until ${other.until}; let one begin when the other ends, or leave one out`;
    return [{ ...entry.at, code: "overlapping-days", text }];
  }
}

/** What is written of a point, as it is compared; ids have no case. */
function keyOf(written: string): string {
  const name = plainName(written);
  return UUID.test(name) ? name.toLowerCase() : name;
}
