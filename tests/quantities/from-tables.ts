import { type Interval, isSingle } from "../../src/base/index.js";
import { type FactState, factOf } from "../../src/facts/index.js";
import type { BoltStrength } from "../../src/quantities/index.js";
import { tablesOn } from "../../src/rulebook/index.js";
import { shippedRulebook } from "../rulebook/shipped.js";

const tables = tablesOn(shippedRulebook(), "2026-11-26");

/** The number that the shipped tables have for some choices; null where they have none. */
export function inTable(id: string, keys: Readonly<Record<string, string>>): number | null {
  const facts = Object.entries(keys).map(([key, value]): readonly [string, FactState] => [
    key,
    { known: true, value, origin: { kind: "none" } },
  ]);
  const state = tables.get(id, new Map(facts));
  if (!state) throw new Error(`no table gives ${id}`);
  if (!state.known) return null;
  if (typeof state.value !== "object" || !isSingle(state.value)) throw new Error(`${id} is not settled`);
  return state.value.lowest;
}

function range(id: string, keys: Readonly<Record<string, string>>): Interval | null {
  const lowest = inTable(`${id}_min`, keys);
  const highest = inTable(`${id}_max`, keys);
  return lowest === null || highest === null ? null : { lowest, highest };
}

export const PROPERTY_CLASSES: readonly string[] = factOf("bolt_class").choices ?? [];

/** Strengths of a bolt; null for a size in which its class is not made. */
export function strengthOrNone(propertyClass: string, diameterMm: number): BoltStrength | null {
  const size = diameterMm <= 16 ? "up-to-16-mm" : diameterMm <= 24 ? "16-to-24-mm" : "24-to-39-mm";
  const of = (id: string) => inTable(id, { bolt_class: propertyClass, bolt_size: size });
  const [tensileMPa, yieldMPa, proofMPa] = [
    of("table.tensile_strength"),
    of("table.yield_point"),
    of("table.proof_stress"),
  ];
  return tensileMPa && yieldMPa && proofMPa ? { tensileMPa, yieldMPa, proofMPa } : null;
}

export function boltStrength(propertyClass: string, diameterMm: number): BoltStrength {
  const strength = strengthOrNone(propertyClass, diameterMm);
  if (!strength) throw new Error(`no strength of ${propertyClass} at ${diameterMm} mm`);
  return strength;
}

export function frictionOf(steel: string, state: string): Interval | null {
  return range("table.friction", { bolt_steel: steel, thread_state: state });
}

export function nutFactorOf(state: string): Interval {
  const factors = range("table.torque_factor", { bolt_steel: "carbon-steel", thread_state: state });
  if (!factors) throw new Error(`no torque factors of ${state} threads`);
  return factors;
}

export function wallStrength(metal: string): Interval | null {
  return range("table.wall_strength", { wall_metal: metal });
}
