import type { Facts, MethodsAllowed, SiteStatements } from "../../facts/index.js";

/** The methods that the site allows for a point, the narrowest list that it states; null where it states none. */
export function methodsAllowedFor(facts: Facts, site: SiteStatements | null): MethodsAllowed | null {
  const stated = site?.methodsAllowed;
  if (!stated) return null;
  const machine = stated.byMachine.get(wordOf(facts, "asset_tag") ?? "");
  return machine ?? stated.byMachineType.get(wordOf(facts, "machine_type") ?? "") ?? stated.wholeSite;
}

/** A fact in words; null where it is not known. */
export function wordOf(facts: Facts, id: string): string | null {
  const said = facts.said?.(id) ?? facts.get(id);
  return said?.known && typeof said.value === "string" ? said.value : null;
}
