import { type FactDefinition, findFact } from "../../facts/index.js";
import type { ValueTable } from "../book/table.js";
import type { RawRule } from "../text/raw.js";
import { below, type Report } from "../text/source.js";

/** A table with the report of its file. */
export interface ReportedTable {
  readonly table: ValueTable;
  readonly report: Report;
}

/**
 * Reports facts that two tables give: nobody could tell which one holds.
 *
 * @returns every fact that a table gives
 */
export function factsGiven(tables: readonly ReportedTable[]): ReadonlySet<string> {
  const homes = new Map<string, ValueTable>();
  for (const { table, report } of tables) {
    for (const [index, id] of table.gives.entries()) {
      const home = homes.get(id);
      if (home) {
        const text = `"${id}" is given by the table "${home.id}" already (${home.at.file}); keep it in one of them`;
        report.atValue(below("/gives", index), "given-twice", text);
      }
      homes.set(id, home ?? table);
    }
  }
  return new Set(homes.keys());
}

const PLACEHOLDER = /\{([^{}]*)\}/g;

/** Reports the first place of a rule or condition that names a fact for which a table is lacking. */
export function checkTablesThere(data: unknown, start: string, given: ReadonlySet<string>, report: Report): boolean {
  for (const { id, pointer } of factsNamedIn(data, start)) {
    const lacking = tableFactsUnder(id).find((fact) => !given.has(fact));
    if (lacking === undefined) continue;
    const what = lacking === id ? `"${id}" is` : `"${id}" needs "${lacking}", which is`;
    const by = findFact(lacking)?.needs ?? [];
    const looked = by.length === 0 ? "nothing" : by.join(", then ");
    const text = `${what} given by no table of the rulebook; write a table into tables/ that gives it, looked up by ${looked}`;
    report.atValue(pointer, "no-table", text);
    return false;
  }
  return true;
}

/** Reports the first place of a rule that needs a table that is not there. */
export function checkTablesOfRule(raw: RawRule, given: ReadonlySet<string>, report: Report): void {
  const { judges, appliesWhen, limits, messages } = raw;
  const parts = { judges, appliesWhen, limits, messages };
  for (const [key, part] of Object.entries(parts)) {
    if (!checkTablesThere(part, below("", key), given, report)) return;
  }
}

interface NamedFact {
  readonly id: string;
  readonly pointer: string;
}

/** Every text that is the id of a fact, or a message that names some; the depth of files is limited. */
function factsNamedIn(data: unknown, pointer: string): readonly NamedFact[] {
  if (typeof data === "string") {
    const inMessage = [...data.matchAll(PLACEHOLDER)].map(([, id = ""]) => id);
    return [data, ...inMessage].flatMap((id) => (findFact(id) ? [{ id, pointer }] : []));
  }
  if (typeof data !== "object" || data === null) return [];
  return Object.entries(data).flatMap(([key, value]) => factsNamedIn(value, below(pointer, key)));
}

/** The facts of tables that a fact is, or is made of. */
function tableFactsUnder(id: string): readonly string[] {
  const fact: FactDefinition | undefined = findFact(id);
  const own = fact?.source === "table" ? [id] : [];
  return [...own, ...(fact?.needs ?? []).flatMap(tableFactsUnder)];
}
