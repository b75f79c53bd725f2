import { describe, expect, it } from "vitest";
import { AllowedBands } from "../../src/workpacks/allowed-bands.js";
import { holdPointsOf } from "../../src/workpacks/hold-points.js";
import { JobFacts } from "../../src/workpacks/job-facts.js";
import { point } from "../outputs/fake-findings.js";
import { known, unknown } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";
import type { Row } from "./made.js";

/** A point at which nothing but what every machine asks for stands in the way. */
const CALM: Row = {
  mounting_method: known("clamp"),
  isolation_possible: known(true),
  turns_by_itself: known(false),
  hazardous_area: known("none"),
  certified_enclosure: known(false),
  working_height: known(0),
  under_warranty: known(false),
};

const ISOLATION = "permit Machine isolated and locked out";
const HAND_BACK = "hold Before the machine is handed back";
const ROTOR = "hold Rotor blocked";
const SPARKS = "permit Grinding and welding throw sparks";
const NO_SPARKS = "hold Hot work is forbidden: no grinding, no sparks";
const AREA = "permit Work in a hazardous area: only with the written authorisation";
const ENCLOSURE = "hold The enclosure is certified: nothing is drilled";
const WALL = "hold Before drilling: what lies behind the wall";
const HEIGHT = "hold Safe access to the place";
const OPEN_HEIGHT = "hold The working height is not stated";
const WARRANTY = "permit The machine is under warranty: its maker has agreed";

async function needed(row: Row): Promise<readonly string[]> {
  const bands = new AllowedBands(await shippedRulebook(), "full", "2026-06-01");
  const facts = new Map(Object.entries({ ...CALM, ...row }));
  const said = holdPointsOf(new JobFacts(point(4, "pass", []), facts, bands));
  return said.map(({ kind, text }) => `${kind} ${text}`);
}

/** Each text begins as wanted, in this order, and there are no more. */
async function expectNeeded(row: Row, wanted: readonly string[]): Promise<void> {
  const found = await needed(row);
  expect(found.map((text, i) => text.slice(0, wanted[i]?.length))).toEqual(wanted);
}

describe("the permits and hold points of a point", () => {
  it("are isolation and handing back where the survey rules out everything else", async () => {
    await expectNeeded({}, [ISOLATION, HAND_BACK]);
  });

  it.each<[string, Row, readonly string[]]>([
    ["a rotor that turns by itself", { turns_by_itself: known(true) }, [ROTOR]],
    ["a rotor of which nobody knows", { turns_by_itself: unknown("missing") }, [ROTOR]],
    ["a tapped hole", { mounting_method: known("tapped-hole") }, [SPARKS, WALL]],
    ["a bonded pad", { mounting_method: known("adhesive-pad") }, [SPARKS]],
    ["a welded pad", { mounting_method: known("welded-pad") }, [SPARKS]],
    ["a magnet", { mounting_method: known("magnet") }, []],
    ["an existing hole", { mounting_method: known("existing-hole") }, []],
    [
      "a permit for hot work",
      { mounting_method: known("adhesive-pad"), hot_work_allowed: known("permit-needed") },
      [SPARKS],
    ],
    [
      "a pad where hot work is forbidden",
      { mounting_method: known("adhesive-pad"), hot_work_allowed: known("forbidden") },
      [NO_SPARKS],
    ],
    ["a clamp where hot work is forbidden", { hot_work_allowed: known("forbidden") }, []],
    ["a hazardous area", { hazardous_area: known("zone-2") }, [AREA]],
    ["an area of which nobody knows", { hazardous_area: unknown("missing") }, [AREA]],
    ["a certified enclosure", { certified_enclosure: known(true) }, [ENCLOSURE]],
    ["a place above the floor", { working_height: known(0.5) }, [HEIGHT]],
    ["a place of which the height is not known", { working_height: unknown("missing") }, [OPEN_HEIGHT]],
    ["a machine under warranty", { under_warranty: known(true) }, [WARRANTY]],
  ])("of %s", async (_what, row, more) => {
    await expectNeeded(row, [ISOLATION, ...more, HAND_BACK]);
  });

  it("come in the order in which they are met", async () => {
    const row = {
      mounting_method: known("tapped-hole"),
      turns_by_itself: known(true),
      hazardous_area: known("zone-1"),
      certified_enclosure: known(true),
      working_height: known(3),
      under_warranty: known(true),
    };
    await expectNeeded(row, [ISOLATION, ROTOR, SPARKS, AREA, ENCLOSURE, WALL, HEIGHT, WARRANTY, HAND_BACK]);
  });
});
