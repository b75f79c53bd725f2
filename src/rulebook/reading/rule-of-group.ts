import { didYouMean } from "../../base/index.js";
import { findFact } from "../../facts/index.js";
import type { Group } from "../book/group.js";
import { gatherNames, type NamesWritten } from "../text/names-in-use.js";
import type { RawRule } from "../text/raw.js";
import { below, type Report } from "../text/source.js";

/** The groups of a rulebook. */
export interface BookGroups {
  readonly read: ReadonlyMap<string, Group>;
  /** Every group file by its name, also those that could not be read. */
  readonly named: ReadonlySet<string>;
}

/** What is needed to look at the names of one rule. */
interface Looking {
  readonly groups: BookGroups;
  /** The facts that the rule may name; null for a rule of points. */
  readonly allowed: ReadonlySet<string> | null;
  readonly group: string | null;
  /** Data of the condition files by id. */
  readonly conditions: ReadonlyMap<string, unknown>;
  readonly report: Report;
}

/**
 * Checks what a rule says of groups: a rule of a group names the facts of that group, of its key and the stage; a
 * rule of points may name facts of any group, which are then those of the group that the point is in. Facts of
 * groups that no group file states are refused in both.
 *
 * @param conditions - data of the condition files by id
 */
export function checkGroupNames(
  raw: RawRule,
  groups: BookGroups,
  conditions: ReadonlyMap<string, unknown>,
  report: Report,
): void {
  const group = raw.group === undefined ? null : groups.read.get(raw.group);
  if (group === undefined) {
    if (groups.named.has(raw.group ?? "")) return;
    const near = didYouMean(raw.group ?? "", groups.named) || "; write it or correct the name";
    report.atValue("/group", "unknown-group", `there is no file groups/${raw.group}.yaml${near}`);
    return;
  }
  const allowed = group && new Set([...group.members.keys(), ...group.key, "stage"]);
  const looking: Looking = { groups, allowed, group: group?.id ?? null, conditions, report };
  const judged = typeof raw.judges === "object" ? Object.entries(raw.judges) : [];
  if (typeof raw.judges === "string") checkName(raw.judges, "/judges", looking);
  for (const [stage, fact] of judged) checkName(fact, below("/judges", stage), looking);
  look(raw.appliesWhen, "/appliesWhen", looking);
  for (const [index, { fail, warn }] of raw.limits.entries()) {
    look(fail, below("/limits", index, "fail"), looking);
    look(warn, below("/limits", index, "warn"), looking);
  }
  for (const [outcome, message] of Object.entries(raw.messages)) {
    for (const [, id = ""] of message.matchAll(/\{([^{}]*)\}/g)) {
      if (findFact(id)) checkName(id, below("/messages", outcome), looking);
    }
  }
}

/** Looks at every fact that a piece of the rule names; the depth of files is limited, so this may recurse. */
function look(data: unknown, pointer: string, looking: Looking): void {
  if (typeof data !== "object" || data === null) return;
  for (const [key, value] of Object.entries(data)) {
    const at = below(pointer, key);
    if (key === "fact" && typeof value === "string") checkName(value, at, looking);
    else if (key === "condition" && typeof value === "string") lookInto(value, at, looking);
    else look(value, at, looking);
  }
}

/** What is wrong within a named condition is said where the rule names it: other rules may use it rightly. */
function lookInto(condition: string, at: string, looking: Looking): void {
  const names: NamesWritten = { facts: new Set(), conditions: new Set([condition]) };
  for (const name of names.conditions) gatherNames(looking.conditions.get(name), names);
  for (const fact of names.facts) if (!checkName(fact, at, looking)) return;
}

function checkName(fact: string, at: string, { groups, allowed, group, report }: Looking): boolean {
  if (allowed?.has(fact)) return true;
  const home = [...groups.read.values()].find(({ members }) => members.has(fact))?.id;
  const isOfGroup = findFact(fact)?.source === "group";
  if (isOfGroup && home === undefined) {
    if (groups.read.size < groups.named.size) return true;
    const text = `no group file states "${fact}"; add it to the members of a group, or leave it out`;
    report.atValue(at, "fact-of-no-group", text);
    return false;
  }
  if (allowed === null) return true;
  const whose = isOfGroup ? `"${fact}" is of the group "${home}"` : `"${fact}" is a fact of single points`;
  const text = `${whose}; a rule of the group "${group}" names ${[...allowed].join(", ")} and nothing else`;
  report.atValue(at, "not-of-this-group", text);
  return false;
}
