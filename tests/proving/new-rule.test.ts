import { describe, expect, it } from "vitest";
import type { FactDefinition } from "../../src/facts/index.js";
import { linesToFill } from "../../src/proving/index.js";
import { asked, bandsFor, bookWithoutRules, JUDGEABLE, provenRule } from "./asked-rules.js";

const load = await bookWithoutRules();

const kindOf = ({ kind, source }: FactDefinition): string => `${kind} of ${source}`;

/** Three facts of each kind from each source, each with another kind of limit; all of them are asked in tests/full. */
const SOME = [...new Set(JUDGEABLE.map(kindOf))].flatMap((what) =>
  JUDGEABLE.filter((definition) => kindOf(definition) === what)
    .slice(0, 3)
    .map((definition, index) => [what, definition, index] as const),
);

describe("a new rule", () => {
  it.each(SOME.map(([what, definition, index]) => [`${definition.id}, a ${what}`, definition, index] as const))(
    "on %s, is proven by its cases",
    (_what, definition, index) => {
      const bands = bandsFor(definition);
      provenRule(load, { judges: definition.id, fails: [bands[index % bands.length] ?? ""] });
    },
  );

  it.each([
    ["that fails and warns", { fails: ["below 9 mm"], warns: ["below 10 mm"] }],
    ["that only warns", { warns: ["above 40 mm"] }],
    ["with two limits of one side", { fails: ["below 9 mm", "when joints_in_path greaterThan 3"] }],
    ["held against a fact of the model", { fails: ["below model.thread_depth_min"] }],
    ["held against a fact, scaled and shifted", { fails: ["below 1.2 times model.thread_depth_min plus 1 mm"] }],
    ["held against another fact of the survey", { fails: ["above hole_depth minus 2 mm"] }],
    [
      "between two facts",
      { judges: "supply_voltage", fails: ["outside model.supply_voltage_min to model.supply_voltage_max"] },
    ],
    ["in other units", { judges: "surface_temperature", fails: ["above 176 °F"] }],
    ["in inches", { fails: ["below 0.354 in"] }],
    ["that does not always apply", { fails: ["below 9 mm"], applies: ["mounting_method equal tapped-hole"] }],
    [
      "with two conditions",
      { fails: ["below 9 mm"], applies: ["mounting_method in tapped-hole, clamp", "nominal_speed lessThan 600 r/min"] },
    ],
    ["with a condition of yes and no", { fails: ["below 9 mm"], applies: ["variable_speed equal yes"] }],
    ["with a condition on another fact", { fails: ["below 9 mm"], applies: ["hole_depth greaterThan thread_depth"] }],
    ["of a group", { judges: "group.supply_current", group: "supply", fails: ["above group.supply_rating"] }],
    ["at one stage", { fails: ["below 9 mm"], stages: ["installed"] as const }],
    ["on what was built", { judges: "applied_torque", fails: ["above model.torque_max"] }],
  ])("%s, is proven by its cases", (_what, more) => {
    provenRule(load, more);
  });

  it("says what it asks, in force from its day, and leaves its source and its remedy to the owner", () => {
    const { text, rule } = provenRule(load, { fails: ["below 9 mm"], warns: ["below 10 mm"] });
    expect(text.split("\n")[0]).toBe("# yaml-language-server: $schema=../../schemas/rule.schema.json");
    expect(rule).toMatchObject({
      title: "The depth of full thread is not below 9 mm",
      stages: ["proposed", "installed"],
      undecided: "warn",
      remedy: { change: ["thread_depth"] },
      limits: [{ from: "2026-11-26", until: null, reviewBy: null }],
    });
    expect([...rule.citations.values()]).toMatchObject([
      { basis: "from-memory", says: expect.stringContaining("FILL IN") },
    ]);
    expect(rule.messages.fail).toContain("{thread_depth}");
    const lines = text.split("\n");
    expect(linesToFill(text).map((line) => lines[line - 1]?.trim().split(":")[0])).toEqual(["source", "text"]);
  });

  it("is of the stage installed where it speaks of what was built, and names no change where nobody can change it", () => {
    expect(provenRule(load, { judges: "applied_torque", fails: ["above 9 N·m"] }).rule).toMatchObject({
      stages: ["installed"],
      remedy: { change: ["applied_torque"] },
    });
    expect(provenRule(load, { judges: "wall_thickness", fails: ["below 9 mm"] }).rule.remedy.change).toEqual([]);
    const made = asked(load, { judges: "voltage_at_point", fails: ["below 20 V"] });
    expect(made).toMatchObject({ ok: true, changeable: expect.arrayContaining(["cable_length", "conductor_size"]) });
  });

  it.each([
    [{ judges: "tread_depth", fails: ["below 9 mm"] }, "judges", 'did you mean "thread_depth"?'],
    [{ judges: "thread_depth" }, "fails", "the rule has no limit"],
    [{ fails: ["below 9 V"] }, "fails", "a length is wanted"],
    [{ fails: ["below 9"] }, "fails", "has no unit"],
    [{ fails: ["under 9 mm"] }, "fails", "does not say what breaks the limit"],
    [{ fails: ["one of a, b"] }, "fails", '"oneOf" names choices'],
    [{ fails: ["below model.thread_depth_mn"] }, "fails", 'did you mean "model.thread_depth_min"?'],
    [{ fails: ["below model.torque_max"] }, "fails", "cannot be compared"],
    [{ fails: ["below 900 mm"] }, "fails", "always broken"],
    [{ judges: "surface_finish", fails: ["below 9 mm"] }, "fails", "compares numbers"],
    [{ judges: "surface_finish", fails: ["is shiny"] }, "fails", "no choice"],
    [{ fails: ["below 9 mm"], warns: ["below 8 mm"] }, "warns", "never warns"],
    [{ fails: ["below 9 mm"], applies: ["mounting_methd equal clamp"] }, "applies", 'did you mean "mounting_method"?'],
    [{ fails: ["below 9 mm"], applies: ["mounting_method is clamp"] }, "applies", "no known operator"],
    [{ fails: ["below 9 mm"], applies: ["clamped"] }, "applies", "is no condition"],
    [{ fails: ["below 9 mm"], applies: ["condition outdoors"] }, "applies", "conditions/outdoors.yaml"],
    [{ fails: ["below 9 mm"], sets: ["ful"] }, "set", 'did you mean "full"?'],
    [{ fails: ["below 9 mm"], group: "suply" }, "group", 'did you mean "supply"?'],
    [{ fails: ["below 9 mm"], applies: ["thread_depth lessThan 5 mm"] }, "fails", "no values were found"],
  ])("is refused by the name of what is wrong: %j", (more, about, says) => {
    const made = asked(load, more);
    if (made.ok) throw new Error(made.text);
    expect(made.mistakes).toEqual([{ about, text: expect.stringContaining(says) }]);
  });
});
