import { array, assert, constantFrom, property } from "fast-check";
import { describe, expect, it } from "vitest";
import { KeptList } from "../../src/screening/kept-list.js";

const IDS = ["hole-depth", "wall-left", "bond-heat", "thin-wall"];
const ids = array(constantFrom(...IDS), { maxLength: 6 });
const listOf = (none: KeptList, of: readonly string[]): KeptList => of.reduce((list, id) => list.with(id), none);

describe("lists kept once", () => {
  it("hold what was put into them, in that order", () => {
    assert(
      property(ids, (of) => {
        expect(listOf(KeptList.empty(), of).ids).toEqual(of);
      }),
    );
  });

  it("are the same list where they say the same", () => {
    const none = KeptList.empty();
    assert(
      property(ids, (of) => {
        expect(listOf(none, of).ids).toBe(listOf(none, [...of]).ids);
      }),
    );
  });

  it("put behind one list what the other has beyond it", () => {
    const none = KeptList.empty();
    assert(
      property(ids, ids, (first, then) => {
        const all = listOf(none, first).withAll(listOf(none, then));
        expect(all.ids).toEqual([...first, ...then.filter((id) => !first.includes(id))]);
      }),
    );
  });
});
