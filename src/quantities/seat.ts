/** What a sensor would be seated on, as far as its foundation goes. */
export type Seat = "solid" | "coated" | "not-solid";

const NOT_SOLID_PLACES: ReadonlySet<string> = new Set(["fan-cover", "guard", "cooling-fin"]);
const SOLID_PLACES: ReadonlySet<string> = new Set(["bearing-housing", "casing", "foot", "pipe"]);
const NOT_SOLID_MATERIALS: ReadonlySet<string> = new Set(["sheet-metal", "plastic"]);
const BARE_FINISHES: ReadonlySet<string> = new Set(["bare-machined", "as-cast", "absent"]);

/**
 * Judges a seat from its three parts; the weakest part decides.
 *
 * Source: common practice; ISO 5348 for the principle that a sensor needs a stiff, bare, solid seat.
 *
 * @param mountedOn - choice of `mounted_on`, or "absent" where no place is named
 * @param material - choice of `surface_material`, or "absent"
 * @param finish - choice of `surface_finish`, or "absent"
 * @returns the seat, or null where neither a place nor a material is named and nothing else decides
 */
export function seatOf(mountedOn: string, material: string, finish: string): Seat | null {
  if (NOT_SOLID_PLACES.has(mountedOn) || NOT_SOLID_MATERIALS.has(material)) return "not-solid";
  if (!BARE_FINISHES.has(finish)) return "coated";
  if (material !== "absent" || SOLID_PLACES.has(mountedOn)) return "solid";
  return null;
}
