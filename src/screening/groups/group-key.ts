import { foldText, tidyText } from "../../base/index.js";
import type { Facts } from "../../facts/index.js";
import { saidOf, siteOfRow } from "../identity.js";

/** What puts a row into a group. */
export interface RowKey {
  /** Equal for the rows of one group: case, accents and blanks do not tell names apart. */
  readonly folded: string;
  /** As this row spells it; the site stands in front where the row itself states it. */
  readonly shown: string;
}

/**
 * The key of a row.
 *
 * @param siteName - the site as the run names it; a site column of the survey wins
 * @returns null for a row in which a fact of the key, or the site, is not known
 */
export function rowKeyOf(facts: Facts, key: readonly string[], siteName: string | null): RowKey | null {
  const site = siteOfRow(facts, siteName);
  if (site === null) return null;
  const parts: string[] = [];
  for (const id of key) {
    const said = saidOf(facts, id);
    if (said?.known !== true || typeof said.value === "object") return null;
    parts.push(tidyText(String(said.value)));
  }
  const shown = (site.stated ? [tidyText(site.name), ...parts] : parts).map(spelled).join(" / ");
  return { folded: [site.name, ...parts].map(foldText).join("\n"), shown };
}

/** A name that holds the sign between two names is put in quotes, so that no two keys are spelled alike. */
function spelled(part: string): string {
  return part.includes(" / ") || part.startsWith('"') ? JSON.stringify(part) : part;
}
