/** The page that lists all packs and what each outage needs. */
export const OVERVIEW_PAGE = "work-packs.html";
/** The page that lists what is held back. */
export const HELD_BACK_PAGE = "held-back.html";
/** Everything that is printed, as data. */
export const PACKS_JSON = "work-packs.json";
/** The workbook to be filled in while fitting. */
export const AS_BUILT_WORKBOOK = "as-built.xlsx";

/** The page of a pack; ids hold small letters, digits and hyphens alone, so that the name is safe on every file system. */
export function packFile(id: string): string {
  return `work-pack.${id}.html`;
}
