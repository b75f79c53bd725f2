import { type Choice, VERDICTS } from "./choice.js";
import { OUTCOMES, POINT_FINDINGS, type PointData, type ReportData, textAt } from "./data.js";

/** Points of one machine, by their places. */
export interface MachinePoints {
  readonly machine: number;
  readonly points: readonly number[];
}

/** Points chosen, machine by machine. */
export interface Selected {
  readonly machines: readonly MachinePoints[];
  readonly count: number;
}

const UNDECIDED: ReadonlySet<number> = new Set([OUTCOMES.indexOf("undecided"), OUTCOMES.indexOf("no-limit-in-force")]);
/** Outcomes from here on keep nothing from passing. */
const PASSES = OUTCOMES.indexOf("pass");

/** Chooses among the points of a report and puts them into order; quick for tens of thousands of points. */
export class Selection {
  readonly #data: ReportData;
  /** Texts as they are searched; those that nobody has searched yet are not there. */
  readonly #folded: (string | undefined)[] = [];
  readonly #margins: Float64Array;
  /** Place of each machine in the order of names. */
  readonly #byName: readonly number[];

  constructor(data: ReportData) {
    this.#data = data;
    this.#margins = Float64Array.from(data.points, (point) => leastMargin(point, data));
    this.#byName = placesByName(data.machines.map((machine) => textAt(data, machine)));
  }

  of(choice: Choice): Selected {
    const isWanted = this.#test(choice);
    const byMachine = new Map<number, number[]>();
    let count = 0;
    for (const [at, point] of this.#data.points.entries()) {
      if (!isWanted(point)) continue;
      count += 1;
      const points = byMachine.get(point[0]);
      if (points) points.push(at);
      else byMachine.set(point[0], [at]);
    }
    const machines = [...byMachine].map(([machine, points]): MachinePoints => ({ machine, points }));
    return { machines: this.#ordered(machines, choice.order), count };
  }

  #test({ verdicts, rule, machine, text, undecided, accepted }: Choice): (point: PointData) => boolean {
    const { rules, machines, findings } = this.#data;
    const shown = new Set(verdicts.map((verdict) => OUTCOMES.indexOf(verdict)));
    const ruleAt = rules.findIndex(([id]) => textAt(this.#data, id) === rule);
    const machineAt = machines.findIndex((name) => textAt(this.#data, name) === machine);
    const search = text.trim() === "" ? null : this.#search(text);
    const hasFinding = (point: PointData, test: (place: number) => boolean): boolean => {
      for (let at = POINT_FINDINGS; at < point.length; at += 2) if (test(Number(point[at]))) return true;
      return false;
    };
    const isOfRule = (place: number): boolean =>
      findings[place]?.[0] === ruleAt && (findings[place]?.[1] ?? PASSES) < PASSES;
    const isOpen = (place: number): boolean => UNDECIDED.has(findings[place]?.[1] ?? -1);
    return (point) =>
      shown.has(point[7]) &&
      (machine === "" || point[0] === machineAt) &&
      (accepted === "any" || (point[8] === 1) === (accepted === "only")) &&
      (rule === "" || hasFinding(point, isOfRule)) &&
      (!undecided || hasFinding(point, isOpen)) &&
      (search === null || search(point, hasFinding));
  }

  /** Each text is looked at once, however many points have it. */
  #search(text: string) {
    const { rules, machines, findings } = this.#data;
    const wanted = folded(text.trim());
    const known = new Map<number, boolean>();
    const holds = (place: number): boolean => {
      const before = known.get(place);
      if (before !== undefined) return before;
      this.#folded[place] ??= folded(textAt(this.#data, place));
      const found = this.#folded[place].includes(wanted);
      known.set(place, found);
      return found;
    };
    const ofFinding = new Map<number, boolean>();
    const inFinding = (place: number): boolean => {
      const before = ofFinding.get(place);
      if (before !== undefined) return before;
      const [rule = -1, , message = 0] = findings[place] ?? [];
      const found = holds(message) || (rules[rule] ?? []).some(holds);
      ofFinding.set(place, found);
      return found;
    };
    return (point: PointData, hasFinding: (point: PointData, test: (place: number) => boolean) => boolean): boolean =>
      holds(machines[point[0]] ?? 0) ||
      holds(point[1]) ||
      holds(point[2]) ||
      point[3].includes(wanted) ||
      hasFinding(point, inFinding);
  }

  #ordered(machines: readonly MachinePoints[], order: Choice["order"]): readonly MachinePoints[] {
    if (order === "survey") return machines.toSorted((a, b) => a.machine - b.machine);
    if (order === "name") {
      return machines.toSorted((a, b) => (this.#byName[a.machine] ?? 0) - (this.#byName[b.machine] ?? 0));
    }
    const rank =
      order === "margin"
        ? (point: number): number => this.#margins[point] ?? Number.POSITIVE_INFINITY
        : (point: number): number =>
            VERDICTS.indexOf((OUTCOMES[this.#data.points[point]?.[7] ?? 0] ?? "pass") as "pass");
    const sorted = machines.map(({ machine, points }) => ({
      machine,
      points: points.toSorted((a, b) => compare(rank(a), rank(b)) || a - b),
    }));
    // The worst point of a machine first decides, then how many are as bad.
    const worst = new Map(sorted.map(({ machine, points }) => [machine, rank(points[0] ?? -1)]));
    const asBad = new Map(
      sorted.map(({ machine, points }) => [machine, points.filter((one) => rank(one) === worst.get(machine)).length]),
    );
    return sorted.sort(
      (a, b) =>
        compare(worst.get(a.machine) ?? 0, worst.get(b.machine) ?? 0) ||
        (asBad.get(b.machine) ?? 0) - (asBad.get(a.machine) ?? 0) ||
        a.machine - b.machine,
    );
  }
}

/** The smallest margin of the findings listed, as a fraction of the limit; without end where none has one. */
function leastMargin(point: PointData, { findings }: ReportData): number {
  let least = Number.POSITIVE_INFINITY;
  for (let at = POINT_FINDINGS; at < point.length; at += 2) {
    const fraction = findings[Number(point[at])]?.[10];
    if (fraction != null && fraction < least) least = fraction;
  }
  return least;
}

function compare(a: number, b: number): number {
  return a === b ? 0 : a - b;
}

/** Text as it is searched: no capitals, no accents. */
function folded(text: string): string {
  return text
    .normalize("NFKD")
    .replace(/\p{Mn}/gu, "")
    .toLowerCase();
}

/** For each name its place in the order of names; numbers within names by their size. */
function placesByName(names: readonly string[]): readonly number[] {
  const keys = names.map((name) => folded(name).replace(/\d+/g, (digits) => digits.padStart(12, "0")));
  const order = keys
    .map((_, at) => at)
    .sort((a, b) => ((keys[a] ?? "") < (keys[b] ?? "") ? -1 : (keys[a] ?? "") > (keys[b] ?? "") ? 1 : a - b));
  const places: number[] = new Array(names.length).fill(0);
  for (const [place, at] of order.entries()) places[at] = place;
  return places;
}
