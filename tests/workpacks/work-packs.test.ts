import { describe, expect, it } from "vitest";
import type { JobValue, PointJob, WorkPacks } from "../../src/workpacks/index.js";
import { known, unknown } from "../tools/make-record.js";
import { packsOf, type Row, safePoint } from "./made.js";

/** All that a tapped hole needs to be known. */
const HOLE: Row = {
  thread: known("M6"),
  sensor_thread: known("M6"),
  drill_diameter: known(5),
  bolt_reach: known(9.5),
  bolt_class: known("8.8"),
  thread_state: known("dry"),
  chip_guard: known("vacuum"),
  wall_thickness: known(24),
};
const MACHINE: Row = { asset_tag: known("P-1"), machine_name: known("Pulp pump 1"), next_outage: known("2026-12-14") };

function onlyJob(packs: WorkPacks): PointJob {
  const [job] = packs.packs.flatMap(({ points }) => points);
  if (!job) throw new Error(JSON.stringify(packs.heldBack));
  return job;
}

async function jobOf(row: Row): Promise<PointJob> {
  return onlyJob(await packsOf([safePoint("A", row)]));
}

function valuesOf(job: PointJob): ReadonlyMap<string, JobValue> {
  const lines = job.sections.flatMap((section) => section.lines);
  return new Map(lines.flatMap(({ values }) => values.map((value) => [value.fact.fact, value] as const)));
}

function textsOf(job: PointJob): string {
  return job.sections.flatMap(({ lines }) => lines.map(({ text, hold }) => `${hold ? "HOLD " : ""}${text}`)).join("\n");
}

describe("the job at a tapped hole", () => {
  it("gives drill, depths and torque with cell, and how far the rules let them lie off", async () => {
    const job = await jobOf(HOLE);
    const values = valuesOf(job);
    const said = ["drill_diameter", "hole_depth", "thread_depth", "target_torque"].map((fact) => {
      const value = values.get(fact);
      return [value?.fact.value, value?.fact.unit, value?.band?.lowest ?? null, value?.band?.highest ?? null];
    });
    expect(said).toEqual([
      [5, "mm", null, null],
      // 15 mm for the bolt; 24 mm of wall less 3 mm left and less the point, 1.50 mm if it is a sharp one (118 deg): 19.49 mm.
      [16, "mm", 15, 19.4],
      // 9.5 mm of bolt in it; 16 mm less three pitches of 1 mm.
      [10, "mm", 9.5, 13],
      // A tenth on both sides of 8 N·m.
      [8, "N·m", 7.2, 8.8],
    ]);
    expect(values.get("hole_depth")?.fact.cells).toEqual([{ sheet: "S", cell: "A1" }]);
    expect(values.get("hole_depth")?.band?.lowestBy).toEqual([{ rule: "hole-depth", outcome: "fail" }]);
    expect(values.get("hole_depth")?.band?.highestBy).toEqual([{ rule: "wall-left", outcome: "undecided" }]);
    expect(job.records.find(({ fact }) => fact === "applied_torque")?.expected?.fact.value).toBe(8);
  });

  it("is never told a torque above what bolt and sensor bear", async () => {
    const job = await jobOf({ ...HOLE, target_torque: known(9.8) });
    const band = valuesOf(job).get("target_torque")?.band;
    // 10 N·m for the sensor, below the tenth above 9.8 N·m.
    expect([band?.lowest, band?.highest, band?.highestBy[0]?.rule]).toEqual([8.82, 10, "tightening-torque"]);
  });

  it("takes the usual drill where the survey names none, and says so", async () => {
    const { drill_diameter: _, ...without } = HOLE;
    const drill = valuesOf(await jobOf(without)).get("drill_diameter");
    expect(drill?.fact).toMatchObject({ value: 5, cells: [], origin: null });
    expect(drill?.fact.assumed).toContain("usual drill for cutting M6");
  });

  it("is held where something is not known, and nothing is guessed", async () => {
    const job = await jobOf({});
    expect(valuesOf(job).get("drill_diameter")?.fact.value).toBeNull();
    expect(textsOf(job)).toMatch(/HOLD No drill is named/);
    expect(textsOf(job)).toMatch(/HOLD No measure is stated that keeps chips out/);
    expect(textsOf(job)).toMatch(/HOLD It is not stated whether the torque is meant for dry/);
    expect(valuesOf(job).get("photo")?.fact.value).toBeNull();
    expect(job.supplies.map(({ name }) => name)).toContain("drill, size not stated");
  });
});

describe("the job at a bonded pad", () => {
  const PAD: Row = {
    mounting_method: known("adhesive-pad"),
    surface_material: known("carbon-steel"),
    cure_time: known(60),
    adhesive: known("two-part-epoxy"),
    adhesive_set_time: known(45),
    install_temperature: known(22),
  };

  it("names adhesive, least temperature and waiting time, and asks for both to be written down", async () => {
    const job = await jobOf(PAD);
    const values = valuesOf(job);
    expect(values.get("adhesive")?.fact.value).toBe("two-part-epoxy");
    expect(values.get("table.bond_temperature_min")?.fact).toMatchObject({ value: 10, unit: "°C" });
    expect(values.get("cure_time")?.band).toMatchObject({ lowest: 45, highest: null });
    expect(job.records.map(({ fact }) => fact)).toEqual(expect.arrayContaining(["cure_time", "install_temperature"]));
    expect(job.records.map(({ fact }) => fact)).not.toContain("hole_depth");
    expect(job.sections.map(({ part }) => part)).not.toContain("hole");
  });

  it("is degreased, abraded and degreased again on cast iron", async () => {
    const [accepted, iron] = ["iron-dust", { ...PAD, surface_material: known("grey-cast-iron") }] as const;
    const packs = await packsOf([safePoint("A", iron)], [{ point: "A", rule: accepted, outcome: "warn" }]);
    const job = onlyJob(packs);
    expect(textsOf(job)).toContain("degrease again");
    expect(job.accepted).toMatchObject([
      { rule: "iron-dust", acceptedBy: "N. Nemo, lead engineer", until: "2027-01-01" },
    ]);
  });
});

describe("the packs of a run", () => {
  it("are one per machine and outage, by outage, those without a day last", async () => {
    const { next_outage: _, ...noDay } = MACHINE;
    const other = { ...MACHINE, next_outage: known("2026-12-01") };
    const { packs, outages, heldBack } = await packsOf([
      safePoint("A", { ...HOLE, ...MACHINE }),
      safePoint("B", { ...HOLE, ...MACHINE }),
      safePoint("C", { ...HOLE, ...other }),
      safePoint("D", { ...HOLE, ...noDay, next_outage: unknown("missing") }),
      safePoint("E", { ...HOLE, ...MACHINE, behind_wall: known("oil") }),
    ]);
    const names = packs.map(({ id, points }) => [id, ...points.map(({ point }) => point)]);
    expect(names).toEqual([
      ["2026-12-01-p-1", "C"],
      ["2026-12-14-p-1", "A", "B"],
      ["no-day-p-1", "D"],
    ]);
    expect(outages.map(({ outage, points }) => [outage, points])).toEqual([
      ["2026-12-01", 1],
      ["2026-12-14", 2],
      [null, 1],
    ]);
    expect(heldBack).toMatchObject([{ point: "E", reasons: [{ cause: "never-fails", rule: "behind-wall" }] }]);
  });

  it("add up what the points of a pack need, and say what is not known", async () => {
    const long = { ...HOLE, ...MACHINE, cable_length: known(18.1), conductor_size: known(0.75) };
    const open = { ...HOLE, ...MACHINE, cable_length: unknown("missing"), conductor_size: known(0.75) };
    const { packs } = await packsOf(
      [safePoint("A", long), safePoint("B", { ...long, cable_length: known(20.2) }), safePoint("C", open)],
      ["A", "B", "C"].flatMap((point) =>
        ["thin-conductors", "voltage-at-point"].map((rule) => ({ point, rule, outcome: "undecided" })),
      ),
    );
    const needed = new Map(packs[0]?.supplies.map(({ name, amount, notKnown }) => [name, [amount, notKnown]]));
    expect(needed.get("bolt M6, class 8.8")).toEqual([3, 0]);
    expect(needed.get("cable, type not stated, 0.75 mm²")).toEqual([38.3, 1]);
    expect(needed.get("drill 5 mm")).toEqual([null, 0]);
  });

  it("have permits and hold points once, with what the survey says of which point", async () => {
    const { packs } = await packsOf([
      safePoint("A", { ...HOLE, ...MACHINE, working_height: known(1.2) }),
      safePoint("B", { ...HOLE, ...MACHINE, behind_wall: known("air"), working_height: known(1.2) }),
    ]);
    const wall = packs[0]?.holdPoints.filter(({ text }) => text.startsWith("Before drilling"));
    expect(wall?.[0]?.stated.map(({ points, values }) => [points, values[0]?.fact.value])).toEqual([
      [["A"], "solid"],
      [["B"], "air"],
    ]);
    const texts = packs[0]?.holdPoints.map(({ text }) => text) ?? [];
    expect(new Set(texts).size).toBe(texts.length);
    expect(texts[0]).toContain("isolated and locked out");
    expect(texts.at(-1)).toContain("guards in place");
  });

  it("are the same again, and held back as a whole where the set does not ask enough", async () => {
    const rows = [safePoint("A", { ...HOLE, ...MACHINE })];
    expect(await packsOf(rows)).toEqual(await packsOf(rows));
    const core = await packsOf(rows, [], { set: "core" });
    expect(core.packs).toEqual([]);
    expect(core.allHeldBack?.cause).toBe("set-too-small");
    expect(core.heldBack).toHaveLength(1);
  });
});
