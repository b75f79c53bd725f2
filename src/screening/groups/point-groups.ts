import type { Facts } from "../../facts/index.js";
import { type GroupIndex, NONE } from "./group-index.js";
import type { GroupsOfPoint } from "./groups-of-point.js";
import { reasonsOutside, stateOutside } from "./outside.js";

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
      return group === NONE ? stateOutside(index, record) : index.sumOf(group).states.get(id);
    },
    sameness: (id) => {
      const index = indexOf(id);
      if (!index) return 0;
      const group = index.groupOf(row);
      return group === NONE ? -1 - reasonsOutside(index, record) : 1 + index.sumOf(group).number;
    },
  };
}
