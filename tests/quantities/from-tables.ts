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

export const CONDUCTOR_SIZES: readonly number[] = [0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10];
export const CONDUCTOR_CLASSES = [1, 2, 5] as const;
export const CONDUCTOR_COATS = ["plain", "coated"] as const;

export type ConductorClass = (typeof CONDUCTOR_CLASSES)[number];
export type ConductorCoat = (typeof CONDUCTOR_COATS)[number];

const CLASS_NAMES: Readonly<Record<ConductorClass, string>> = { 1: "solid", 2: "stranded", 5: "flexible" };

/** Greatest resistance of a listed size at 20 °C, Ω/km. */
export function greatestResistance(mm2: number, conductorClass: ConductorClass, coat: ConductorCoat = "plain"): number {
  const keys = { conductor_listed: `${mm2}-mm2`, conductor_class: CLASS_NAMES[conductorClass] };
  const found = inTable(`table.resistance_${coat}_max`, keys);
  if (found === null) throw new Error(`no resistance of ${mm2} mm²`);
  return found;
}

export const OVER_COPPER = inTable("table.over_copper_max", {}) ?? Number.NaN;
