import type { Said, SiteStatements, StatedFacts } from "../facts/index.js";
import { ABSENT, type RowFacts } from "./row-facts.js";

/**
 * Fills what the row leaves empty from the site's statements, the narrowest first (machine, type of machine,
 * whole site), and then takes the unmentioned parts of the seat as absent. A filled cell always wins, also one
 * that cannot be read.
 */
export function addSiteWord(row: RowFacts, site: SiteStatements | null): void {
  const { draft, empty, absent } = row;
  if (site) {
    for (const stated of statementsFor(row, site)) {
      for (const [fact, state] of stated) {
        if (!draft.has(fact) || (empty.has(fact) && draft.get(fact)?.known === false)) draft.state(fact, state);
      }
    }
  }
  for (const [fact, { row: at, column }] of absent) if (!draft.has(fact)) draft.setFrom(fact, ABSENT, at, column);
}

function statementsFor({ draft: facts, empty }: RowFacts, site: SiteStatements): readonly StatedFacts[] {
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

function textOf(state: Said | undefined): string | null {
  return state?.known && typeof state.value === "string" ? state.value : null;
}
