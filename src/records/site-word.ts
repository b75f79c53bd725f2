import type { FactState, SiteStatements, StatedFacts } from "../facts/index.js";
import type { RowFacts } from "./row-facts.js";

/**
 * Fills what the row leaves empty from the site's statements, the narrowest first (machine, type of machine,
 * whole site), and then takes the unmentioned parts of the seat as absent. A filled cell always wins, also one
 * that cannot be read.
 */
export function withSiteWord(row: RowFacts, site: SiteStatements | null): Map<string, FactState> {
  const facts = row.facts;
  if (site) {
    for (const stated of statementsFor(row, site)) {
      for (const [fact, state] of stated) {
        if (!facts.has(fact) || (row.empty.has(fact) && facts.get(fact)?.known === false)) facts.set(fact, state);
      }
    }
  }
  for (const [fact, state] of row.absent) if (!facts.has(fact)) facts.set(fact, state);
  return facts;
}

function statementsFor({ facts, empty }: RowFacts, site: SiteStatements): readonly StatedFacts[] {
  const tag = textOf(facts.get("asset_tag"));
  const machine = tag === null ? undefined : site.byMachine.get(tag);
  // A cell that is filled but cannot be read leaves the type open; the site's word stands in for empty cells only.
  const open = !facts.has("machine_type") || empty.has("machine_type");
  const type = textOf(facts.get("machine_type")) ?? (open ? machineTypeStated(machine, site) : null);
  const ofType = type === null ? undefined : site.byMachineType.get(type);
  return [machine, ofType, site.wholeSite].filter((stated) => stated !== undefined);
}

function machineTypeStated(machine: StatedFacts | undefined, site: SiteStatements): string | null {
  return textOf(machine?.get("machine_type") ?? site.wholeSite.get("machine_type"));
}

function textOf(state: FactState | undefined): string | null {
  return state?.known && typeof state.value === "string" ? state.value : null;
}
