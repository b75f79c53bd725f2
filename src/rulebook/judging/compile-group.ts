import type { Truth } from "../../base/index.js";
import { type Facts, MISSING } from "../../facts/index.js";
import type { Look } from "../book/check.js";
import type { Group, GroupMember } from "../book/group.js";
import type { OpenFact } from "../book/judgement.js";
import type { Rulebook } from "../book/rulebook.js";
import { conditionCheck } from "./condition-check.js";
import { factsInCondition } from "./facts-named.js";

/** A fact of a group, made ready to be taken from many rows. */
export interface CompiledMember extends Pick<GroupMember, "is" | "fact"> {
  /** With the prefix `group.` */
  readonly id: string;
  /** Whether a row is meant; null where its facts do not settle that. */
  holds(facts: Facts): Truth;
  /** The facts of the row that leave it open whether the row is meant. */
  openIn(facts: Facts): readonly OpenFact[];
}

/** A group with its members made ready. */
export interface CompiledGroup {
  readonly group: Group;
  readonly members: readonly CompiledMember[];
  /** Every fact of a row that its members look at, each once; the key is not among them. */
  readonly factsNamed: readonly string[];
}

/** Makes a checked group ready to be taken from many rows. */
export function compileGroup(group: Group, { conditions }: Pick<Rulebook, "conditions">): CompiledGroup {
  const members = [...group.members].map(([id, { is, fact, where }]): CompiledMember => {
    const check = where && conditionCheck(where, conditions);
    return {
      id,
      is,
      fact,
      holds: (facts) => (check ? check.truth(lookIn(facts)) : true),
      openIn: (facts) => {
        const open = new Map<string, OpenFact["reason"]>();
        check?.gatherOpen(lookIn(facts), open);
        return [...open].map(([id, reason]) => ({ fact: id, reason }));
      },
    };
  });
  const named = [...group.members.values()].flatMap(({ fact, where }) => [
    ...(fact === null ? [] : [fact]),
    ...(where === null ? [] : factsInCondition(where, conditions)),
  ]);
  return { group, members, factsNamed: [...new Set(named)] };
}

function lookIn(facts: Facts): Look {
  return (id) => facts.get(id) ?? MISSING;
}
