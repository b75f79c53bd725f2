import { describe, expect, it } from "vitest";
import { fillMapping } from "../../src/handover/index.js";
import { pointWording } from "../../src/outputs/index.js";
import { surveyOf } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";
import { screenWith } from "../tools/with-deviations.js";
import { safePoint, without } from "../workpacks/made.js";
import { fill, mappingOf, mappingText, pointsMapping } from "./made-mapping.js";

const COLUMNS = [{ heading: "Point", field: "point" }];
const ROWS = [safePoint("P-1"), without(safePoint("P-2"), "behind_wall"), safePoint("P-3")];

describe("targets of released points", () => {
  it("take those on which work may be planned, and others can say why not", async () => {
    const rulebook = await shippedRulebook();
    const { screening } = screenWith(rulebook, [surveyOf(ROWS)], null, { set: "full" });
    const held = { heading: "Held back", field: "heldBack" };
    const released = { heading: "Released", field: "released", values: { yes: "Y", no: "N" }, otherwise: "stop" };
    const mapping = await mappingOf(
      mappingText([
        { target: "orders", where: { released: true }, columns: COLUMNS },
        { target: "all", columns: [...COLUMNS, released, held] },
      ]),
    );
    const [orders, all] = fillMapping(mapping, screening, pointWording(screening.head), rulebook).targets;
    expect(orders).toMatchObject({ taken: 2, leftOut: 1 });
    expect(orders?.mapped.rows.map(({ values }) => values[0]).toSorted()).toEqual(["P-1", "P-3"]);
    const said = new Map(all?.mapped.rows.map(({ values }) => [values[0], values.slice(1)]));
    expect(said.get("P-1")).toEqual(["Y", null]);
    expect(said.get("P-2")?.[0]).toBe("N");
    expect(said.get("P-2")?.[1]).toContain("behind");
  });

  it("are refused where the run can release none, with what to do", async () => {
    const mapping = pointsMapping(COLUMNS, { where: { released: true } });
    const { problems } = await fill(mapping, "Point ID;Machine\nP-1;Mill\n");
    expect(problems).toMatchObject([{ target: "points", of: "all points", code: "none-releasable" }]);
    expect(problems[0]?.text).toMatch(/the set "core" does not ask .*; screen with --set full$/);
  });

  it("want the rulebook", async () => {
    const rulebook = await shippedRulebook();
    const { screening } = screenWith(rulebook, [surveyOf(ROWS)], null, { set: "full" });
    const mapping = await mappingOf(pointsMapping(COLUMNS, { where: { released: true } }));
    expect(() => fillMapping(mapping, screening, pointWording(screening.head))).toThrow(RangeError);
  });
});
