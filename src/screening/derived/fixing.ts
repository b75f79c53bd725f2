import type { Interval } from "../../base/index.js";
import type { FactState, Facts, UnknownReason } from "../../facts/index.js";
import {
  boltInBlindHole,
  cuttingDrillMm,
  drillPointMm,
  rimGapMm,
  type Thread,
  tapHoleUseWithin,
  threadDesignated,
  wallLeftMm,
  wallMetalOf,
} from "../../quantities/index.js";
import { assuming, type Derivation, intervalOf, known, rounded, stateOf, unknownFor } from "./deriving.js";

/** Metal, hole, thread and bond. */
export const FIXING_DERIVED: Readonly<Record<string, Derivation>> = {
  wall_metal: deriveWallMetal,
  wall_left: deriveWallLeft,
  thread_run_out: deriveThreadRunOut,
  usable_thread: deriveUsableThread,
  tap_hole: deriveTapHole,
  threads_match: deriveThreadsMatch,
  pad_gap: derivePadGap,
};

/** Included angles of the usual drill points, degrees: the sharper one is longer. */
const SHARP_POINT_DEG = 118;
const BLUNT_POINT_DEG = 135;
/** Least size that is counted with; an accuracy may carry the lower end of a small size below 0. */
const LEAST_MM = 0.001;
/** The smallest thread of which all tolerances are known. */
const SMALLEST_THREAD_MM = 3;

/** Unknown although every fact under it is known: what the first of them says is not enough. */
export function saysTooLittle(from: readonly string[], reason: UnknownReason): FactState {
  return { known: false, reason, origin: { kind: "derived", from } };
}

/** A size with two finite ends above 0; null for one that is not known. */
export function sizeOf(facts: Facts, id: string): Interval | null {
  const interval = intervalOf(stateOf(facts, id));
  if (!interval || !Number.isFinite(interval.lowest) || !Number.isFinite(interval.highest)) return null;
  return interval.highest < LEAST_MM
    ? null
    : { lowest: Math.max(interval.lowest, LEAST_MM), highest: interval.highest };
}

/** The thread that a designation names; null where it is missing or names none that is known. */
export function threadOf(facts: Facts, id: string): Thread | null {
  const state = stateOf(facts, id);
  return state.known && typeof state.value === "string" ? threadDesignated(state.value) : null;
}

/**
 * Unknown for the sake of one of the facts that cannot be used: one that nobody was asked for comes first, since
 * without it no row can be settled. A word that is known and cannot be used (a thread that no table has) is unreadable.
 *
 * @param unusable - at least one
 */
export function unknownForOne(unusable: readonly string[], from: readonly string[], facts: Facts): FactState {
  const notAsked = unusable.find((id) => stateOf(facts, id).origin.kind === "none");
  const id = notAsked ?? unusable[0] ?? "";
  const state = stateOf(facts, id);
  return state.known && typeof state.value === "string"
    ? saysTooLittle([id, ...from.filter((other) => other !== id)], "unreadable")
    : unknownFor(id, from, facts);
}

/** Those of these facts that are null in what was read of them. */
export function unusableOf(read: Readonly<Record<string, unknown>>): readonly string[] {
  return Object.keys(read).filter((id) => read[id] === null);
}

function deriveWallMetal(facts: Facts): FactState {
  const state = stateOf(facts, "surface_material");
  if (!state.known || typeof state.value !== "string") return unknownFor("surface_material", [], facts);
  const metal = wallMetalOf(state.value);
  return metal === null ? saysTooLittle(["surface_material"], "missing") : known(metal, ["surface_material"], facts);
}

/** More wall leaves more, a deeper hole and a longer point leave less; the point grows with the drill and its sharpness. */
function deriveWallLeft(facts: Facts): FactState {
  const from = ["wall_thickness", "hole_depth"];
  const wall = sizeOf(facts, "wall_thickness");
  const hole = sizeOf(facts, "hole_depth");
  const left = (wallMm: number, holeDepthMm: number, drillPoint: number): number =>
    wallLeftMm({ wallMm, seatDepthMm: 0, holeDepthMm, drillPointMm: drillPoint });
  const drill = drillOf(facts);
  if (!wall || !hole) {
    const unusable = unusableOf({ wall_thickness: wall, hole_depth: hole, [settlingDrill(facts)]: drill });
    return unknownForOne(unusable, from, facts);
  }
  if (!drill) {
    // Some point there is, so that this much is left at most, whatever the drill.
    const most = rounded({ lowest: Number.NEGATIVE_INFINITY, highest: left(wall.highest, hole.lowest, 0) });
    return known(most, [settlingDrill(facts), ...from], facts);
  }
  const bounds = {
    lowest: left(wall.lowest, hole.highest, drillPointMm(drill.mm.highest, SHARP_POINT_DEG)),
    highest: left(wall.highest, hole.lowest, drillPointMm(drill.mm.lowest, BLUNT_POINT_DEG)),
  };
  return known(rounded(bounds), [...from, drill.from], facts);
}

/** The drill as stated; where nobody wrote one, the usual one for the thread (where no chart has it: diameter less pitch). */
function drillOf(facts: Facts): { readonly mm: Interval; readonly from: string } | null {
  const stated = sizeOf(facts, "drill_diameter");
  if (stated) return { mm: stated, from: "drill_diameter" };
  if (isWritten(facts, "drill_diameter")) return null;
  const thread = threadOf(facts, "thread");
  if (!thread) return null;
  const usual = cuttingDrillMm(thread) ?? thread.majorMm - thread.pitchMm;
  return { mm: { lowest: usual, highest: usual }, from: "thread" };
}

function settlingDrill(facts: Facts): string {
  return isWritten(facts, "drill_diameter") ? "drill_diameter" : "thread";
}

/** Whether somebody wrote something down, which need not be of use: that is another thing than an empty cell. */
function isWritten(facts: Facts, id: string): boolean {
  const state = stateOf(facts, id);
  return state.known || state.reason !== "missing";
}

/** Rises with the depth of the hole, falls with that of the thread. */
function deriveThreadRunOut(facts: Facts): FactState {
  const from = ["hole_depth", "thread_depth", "thread"];
  const hole = sizeOf(facts, "hole_depth");
  const depth = sizeOf(facts, "thread_depth");
  const thread = threadOf(facts, "thread");
  if (!hole || !depth || !thread) {
    return unknownForOne(unusableOf({ hole_depth: hole, thread_depth: depth, thread }), from, facts);
  }
  const bounds = {
    lowest: (hole.lowest - depth.highest) / thread.pitchMm,
    highest: (hole.highest - depth.lowest) / thread.pitchMm,
  };
  return known(rounded(bounds), from, facts);
}

/** The thread that the bolt can use: what is cut, and no more than the bolt reaches; rises with both. */
function deriveUsableThread(facts: Facts): FactState {
  const depth = sizeOf(facts, "thread_depth");
  const thread = threadOf(facts, "thread");
  if (!depth || !thread) {
    return unknownForOne(unusableOf({ thread_depth: depth, thread }), ["thread_depth", "thread"], facts);
  }
  const used = (depthMm: number, reachMm: number): number =>
    boltInBlindHole(reachMm, 0, depthMm).engagementMm / thread.majorMm;
  const reach = sizeOf(facts, "bolt_reach");
  if (reach) {
    const bounds = { lowest: used(depth.lowest, reach.lowest), highest: used(depth.highest, reach.highest) };
    return known(rounded(bounds), ["thread_depth", "thread", "bolt_reach"], facts);
  }
  const cut = { lowest: used(depth.lowest, depth.lowest), highest: used(depth.highest, depth.highest) };
  if (isWritten(facts, "bolt_reach")) {
    return known(rounded({ lowest: 0, highest: cut.highest }), ["bolt_reach", "thread_depth", "thread"], facts);
  }
  // Most surveys do not say how far the bolt reaches; then the cut thread is the most that can be judged.
  return assuming("the bolt is taken to reach through all of the full thread", known(rounded(cut), CUT_THREAD, facts));
}

const CUT_THREAD = ["thread_depth", "thread"];

function deriveTapHole(facts: Facts): FactState {
  const from = ["drill_diameter", "thread"];
  const drill = sizeOf(facts, "drill_diameter");
  const found = threadOf(facts, "thread");
  const thread = found && found.majorMm >= SMALLEST_THREAD_MM ? found : null;
  if (!drill || !thread) return unknownForOne(unusableOf({ drill_diameter: drill, thread }), from, facts);
  // The uses follow each other as the hole grows, so that one use at both ends holds between them.
  const use = tapHoleUseWithin(thread, drill);
  return use === null ? unknownFor("drill_diameter", from, facts) : known(use, from, facts);
}

function deriveThreadsMatch(facts: Facts): FactState {
  const from = ["thread", "sensor_thread"];
  const hole = threadOf(facts, "thread");
  const sensor = threadOf(facts, "sensor_thread");
  if (!hole || !sensor) return unknownForOne(unusableOf({ thread: hole, sensor_thread: sensor }), from, facts);
  return known(hole.designation === sensor.designation, from, facts);
}

/** Falls with the radius of the surface, rises with the width of the pad, which is no narrower than the sensor needs. */
function derivePadGap(facts: Facts): FactState {
  const from = ["surface_radius", "model.seat_diameter_min"];
  const pad = sizeOf(facts, "model.seat_diameter_min");
  if (!pad) return unknownFor("model.seat_diameter_min", from, facts);
  const radius = sizeOf(facts, "surface_radius");
  if (radius) {
    // Under a pad that is wider than the cylinder the gap is at least half its width, however small the radius.
    const gap = (radiusMm: number, padMm: number): number => rimGapMm(Math.max(radiusMm, padMm / 2), padMm);
    const bounds = { lowest: gap(radius.highest, pad.lowest), highest: gap(radius.lowest, pad.highest) };
    return known(rounded(bounds), from, facts);
  }
  const flat = sizeOf(facts, "flat_diameter");
  const curved = stateOf(facts, "surface_radius");
  // Nobody writes a radius for a flat surface; one that cannot be read is another thing.
  const isFlat = !curved.known && curved.reason === "missing" && flat !== null && flat.lowest >= pad.highest;
  return isFlat
    ? known({ lowest: 0, highest: 0 }, ["flat_diameter", "model.seat_diameter_min"], facts)
    : unknownFor(settlingGap(facts), from, facts);
}

/** Where nobody was asked for a radius, a wide enough flat says that there is none. */
function settlingGap(facts: Facts): string {
  const isAsked = (id: string): boolean => stateOf(facts, id).origin.kind !== "none";
  return !isAsked("surface_radius") && isAsked("flat_diameter") && !sizeOf(facts, "flat_diameter")
    ? "flat_diameter"
    : "surface_radius";
}
