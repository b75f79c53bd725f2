import {
  factOf,
  type Said,
  type SiteStatements,
  type StatedAccuracy,
  type StatedFacts,
  withAccuracy,
} from "../../facts/index.js";
import { ABSENT, type RowFacts } from "./row-facts.js";

/**
 * Fills what the row leaves empty from the site's statements, the narrowest first (machine, type of machine,
 * whole site), and then takes the unmentioned parts of the seat as absent. A filled cell always wins, also one
 * that cannot be read. Last, numbers get the accuracy of the way in which the site says that they are measured.
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
  if (site?.measuredBy) widenAsMeasured(row, site, site.measuredBy);
}

/** Numbers that do not say how accurate they are get the accuracy of the way in which the site measures them. */
function widenAsMeasured(row: RowFacts, site: SiteStatements, ways: NonNullable<SiteStatements["measuredBy"]>): void {
  const { draft } = row;
  const { tag, type } = machineOf(row, site);
  const ofMachine = tag === null ? undefined : ways.byMachine.get(tag);
  const ofType = type === null ? undefined : ways.byMachineType.get(type);
  const done = new Set<string>();
  for (const named of [ofMachine, ofType, ways.wholeSite]) {
    for (const [fact, way] of named ?? []) {
      if (done.has(fact)) continue;
      done.add(fact);
      const said = draft.get(fact);
      if (said?.known) draft.restate(fact, widenedOnce(said, fact, way));
    }
  }
}

/** The same object for the same number and way, since thousands of rows say few different things. */
const widenedBefore = new WeakMap<Said, WeakMap<StatedAccuracy, Said>>();

function widenedOnce(said: Said & { readonly known: true }, fact: string, way: StatedAccuracy): Said {
  const byWay = widenedBefore.get(said) ?? new WeakMap<StatedAccuracy, Said>();
  widenedBefore.set(said, byWay);
  const widened = byWay.get(way) ?? withAccuracy(said, way, factOf(fact));
  byWay.set(way, widened);
  return widened;
}

/** Tag and type of the machine of a row, as far as they are known. */
function machineOf(
  { draft: facts, empty }: RowFacts,
  site: SiteStatements,
): { tag: string | null; type: string | null } {
  const tag = textOf(facts.get("asset_tag"));
  const machine = tag === null ? undefined : site.byMachine.get(tag);
  // A cell that is filled but cannot be read leaves the type open; the site's word stands in for empty cells only.
  const open = !facts.has("machine_type") || empty.has("machine_type");
  const type = textOf(facts.get("machine_type")) ?? (open ? machineTypeStated(machine, site) : null);
  return { tag, type };
}

function statementsFor(row: RowFacts, site: SiteStatements): readonly StatedFacts[] {
  const { tag, type } = machineOf(row, site);
  const machine = tag === null ? undefined : site.byMachine.get(tag);
  const ofType = type === null ? undefined : site.byMachineType.get(type);
  return [machine, ofType, site.wholeSite].filter((stated) => stated !== undefined);
}

function machineTypeStated(machine: StatedFacts | undefined, site: SiteStatements): string | null {
  return textOf(machine?.get("machine_type") ?? site.wholeSite.get("machine_type"));
}

function textOf(state: Said | undefined): string | null {
  return state?.known && typeof state.value === "string" ? state.value : null;
}
