/** Words for a material that leave open which metal it is: sheet may be steel or aluminium. */
const OPEN_MATERIALS: ReadonlySet<string> = new Set(["sheet-metal", "absent"]);

/**
 * The metal (or plastic) that a material of the survey names.
 *
 * Source: the words themselves. Whether a magnet holds, and how deep a thread must be, hangs on the metal.
 *
 * @param material - choice of `surface_material`
 * @returns the same word, or null where it leaves the metal open
 */
export function wallMetalOf(material: string): string | null {
  return OPEN_MATERIALS.has(material) ? null : material;
}
