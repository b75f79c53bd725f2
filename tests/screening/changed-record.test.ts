import { describe, expect, it } from "vitest";
import type { FactState } from "../../src/facts/index.js";
import { ChangedRecord, supposed } from "../../src/screening/changed-record.js";
import { surveyOfCsv } from "../tools/survey-of.js";

describe("a record with some facts changed", () => {
  async function record() {
    const survey = await surveyOfCsv(
      "Point ID;Hole depth (mm);Mounting method\nP-1;12;tapped hole\nP-2;12;tapped hole\n",
    );
    const [first, second] = survey.records;
    if (!first || !second) throw new Error("no records");
    return { first, second };
  }
  const deeper: ReadonlyMap<string, FactState> = new Map([["hole_depth", supposed({ lowest: 15, highest: 15 })]]);

  it("says the changed facts, stands in no cell for them, and keeps all others", async () => {
    const { first } = await record();
    const changed = new ChangedRecord(first.facts, deeper);
    expect(changed.get("hole_depth")).toEqual(supposed({ lowest: 15, highest: 15 }));
    expect(changed.cells("hole_depth")).toEqual([]);
    expect(changed.get("mounting_method")).toEqual(first.facts.get("mounting_method"));
    expect(changed.cells("mounting_method")).toHaveLength(1);
    expect(new Map(changed).get("hole_depth")).toEqual(changed.get("hole_depth"));
    expect([...changed].map(([id]) => id).sort()).toEqual([...first.facts].map(([id]) => id).sort());
  });

  it("adds facts of which the record says nothing", async () => {
    const { first } = await record();
    const changed = new ChangedRecord(first.facts, new Map([["cure_time", supposed({ lowest: 20, highest: 20 })]]));
    expect(changed.has("cure_time")).toBe(true);
    expect(new Map(changed).has("cure_time")).toBe(true);
  });

  it("is the same as another record changed alike, and not as the record itself", async () => {
    const { first, second } = await record();
    const [one, other] = [first, second].map(({ facts }) => new ChangedRecord(facts, deeper));
    const another = new ChangedRecord(first.facts, new Map([["hole_depth", supposed({ lowest: 16, highest: 16 })]]));
    expect(one?.sameness("hole_depth")).toBe(other?.sameness("hole_depth"));
    expect(one?.sameness("hole_depth")).not.toBe(another.sameness("hole_depth"));
    expect(one?.sameness("hole_depth")).not.toBe(first.facts.sameness?.("hole_depth"));
    expect(one?.sameness("mounting_method")).toBe(first.facts.sameness?.("mounting_method"));
    expect(one?.family).toBe(first.facts.family);
  });
});
