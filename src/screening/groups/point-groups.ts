import type { Facts } from "../../facts/index.js";
import { saidOf } from "../identity.js";
import type { MissingFact } from "../result.js";
import { type GroupIndex, NONE } from "./group-index.js";
import type { GroupFactState } from "./group-state.js";
import type { GroupsOfPoint } from "./groups-of-point.js";

/**
 * The facts of the groups of a row.
 *
 * @param record - the facts of the row, for the reason why it is in no group
 */
export function groupsOfPoint(indexes: readonly GroupIndex[], row: number, record: Facts): GroupsOfPoint {
  const indexOf = (id: string): GroupIndex | undefined =>
    indexes.find(({ compiled }) => compiled.group.members.has(id));
  return {
    get: (id) => {
      const index = indexOf(id);
      if (!index) return undefined;
      const group = index.groupOf(row);
      return group === NONE ? outside(index, record) : index.sumOf(group).states.get(id);
    },
    sameness: (id) => {
      const index = indexOf(id);
      if (!index) return 0;
      const group = index.groupOf(row);
      return group === NONE ? -1 - reasonsOf(index, record) : 1 + index.sumOf(group).number;
    },
  };
}

/** A point that is in no group, because its key is not known. */
function outside(index: GroupIndex, record: Facts): GroupFactState {
  const lacking = keyOf(index).flatMap((fact): readonly MissingFact[] => {
    const said = saidOf(record, fact);
    if (fact === "site" && (said === undefined || (!said.known && said.reason === "missing"))) return [];
    return said?.known ? [] : [{ fact, reason: said?.reason ?? "missing" }];
  });
  const origin = { kind: "derived", from: index.compiled.group.key } as const;
  return { known: false, reason: lacking[0]?.reason ?? "missing", origin, lacking };
}

const REASONS: readonly MissingFact["reason"][] = ["missing", "doubtful", "unreadable", "conflicting", "too-close"];

/** The reasons why a key is not known, as one number. */
function reasonsOf(index: GroupIndex, record: Facts): number {
  return keyOf(index).reduce((number, fact) => {
    const said = saidOf(record, fact);
    const reason = said === undefined ? 1 : said.known ? 0 : 1 + REASONS.indexOf(said.reason);
    return number * (REASONS.length + 1) + reason;
  }, 0);
}

/** A site that is not stated puts nobody out of a group, one that cannot be read does. */
function keyOf({ compiled }: GroupIndex): readonly string[] {
  return ["site", ...compiled.group.key];
}
