import type { PlainDay } from "../base/index.js";
import { findFact } from "../facts/index.js";
import type { Rulebook, ValueTable } from "../rulebook/index.js";
import type { ReadyRule } from "./judge-point.js";
import { factsInMessage } from "./messages.js";
import type { TableShown } from "./result.js";

/** The tables in force on the day that rules look up, with their sources, in the order of their files. */
export function tablesShown(
  rules: readonly ReadyRule[],
  rulebook: Pick<Rulebook, "tables">,
  asOf: PlainDay,
): readonly TableShown[] {
  const used = new Set<string>();
  for (const { compiled } of rules) {
    const { fail, warn } = compiled.messages;
    for (const id of [...compiled.factsNamed, ...factsInMessage(fail), ...factsInMessage(warn)]) addWithNeeds(id, used);
  }
  return [...rulebook.tables.values()]
    .filter(({ gives }) => gives.some((id) => used.has(id)))
    .flatMap((table) => showTable(table, asOf));
}

function addWithNeeds(id: string, used: Set<string>): void {
  if (used.has(id)) return;
  used.add(id);
  for (const need of findFact(id)?.needs ?? []) addWithNeeds(need, used);
}

function showTable(table: ValueTable, asOf: PlainDay): readonly TableShown[] {
  const entry = table.entries.find(({ from, until }) => from <= asOf && (until === null || asOf < until));
  if (!entry) return [];
  const { from, until, reviewBy, cites, at } = entry;
  return [
    {
      id: table.id,
      title: table.title,
      by: table.by,
      gives: table.gives,
      from,
      until,
      reviewBy,
      reviewOverdue: reviewBy !== null && asOf > reviewBy,
      citations: cites.flatMap((id) => table.citations.get(id) ?? []),
      origin: { file: at.file, line: at.line },
    },
  ];
}
