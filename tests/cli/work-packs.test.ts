import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { WORK_PACKS_SCHEMA } from "../../src/outputs/index.js";
import type { WorkPacks } from "../../src/workpacks/index.js";
import { runCommand } from "../tools/run-command.js";

const SURVEY = [
  "Point ID;Asset tag;Next outage;Speed (rpm);Variable speed;Speed signal;Mounted on;Material;Surface finish;Flat diameter (mm);Mounting method;Hole depth (mm);Thread depth (mm);Tightening torque (Nm);Supply voltage;Kind of supply;Isolation possible;Rotor can turn by itself;Hot work;Hazardous area;Certified enclosure;Behind wall;Safety extra-low voltage",
  "A-1;P-1;2026-12-14;1485;no;none;bearing housing;grey cast iron;bare machined;35;tapped hole;16;10;8;24 V;DC;yes;no;allowed;none;no;solid;SELV",
  "A-2;P-1;2026-12-14;1485;no;none;bearing housing;grey cast iron;bare machined;35;tapped hole;16;10;12;24 V;DC;yes;no;allowed;none;no;solid;SELV",
  "A-3;P-2;2026-12-14;1485;no;none;bearing housing;grey cast iron;bare machined;35;tapped hole;16;10;8;24 V;DC;;no;allowed;none;no;solid;SELV",
].join("\n");
const DEVIATIONS = `deviations:
  - point: A-2
    rule: tightening-torque
    outcome: fail
    reason: "the maker of the sensor has agreed to 12 N·m"
    acceptedBy: "A. Quill, vibration engineer"
    from: 2026-01-01
    until: 2027-01-01
`;

let folder = "";
const here = (name: string): string => join(folder, name);
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "spotface-packs-"));
  writeFileSync(here("survey.csv"), `${SURVEY}\n`);
  writeFileSync(here("deviations.yaml"), DEVIATIONS);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const full = (...more: readonly string[]) => runCommand("work-packs", here("survey.csv"), "--set", "full", ...more);

describe("spotface work-packs", () => {
  it("writes a page per machine and outage, an overview, what is held back, a workbook, and all of it as JSON", async () => {
    const out = here("packs");
    const { code, err, out: said } = await full("--out", out, "--deviations", here("deviations.yaml"));
    expect([code, err]).toEqual([0, ""]);
    expect(said).toContain("Released: 2 points in 1 work pack, one per machine and outage");
    expect(said).toContain("Held back: 1 point");
    expect(said).toContain("A verdict is a screening, not a permission.");
    expect(readdirSync(out).sort()).toEqual([
      "as-built.xlsx",
      "held-back.html",
      "work-pack.2026-12-14-p-1.html",
      "work-packs.html",
      "work-packs.json",
    ]);
    const page = readFileSync(join(out, "work-pack.2026-12-14-p-1.html"), "utf8");
    expect(page).toContain("A. Quill, vibration engineer");
    expect(page).toContain("2027-01-01");
    expect(page).not.toMatch(/ style=|<script|https?:/);
    expect(readFileSync(join(out, "held-back.html"), "utf8")).toContain("isolation-possible");
    const document = JSON.parse(readFileSync(join(out, "work-packs.json"), "utf8")) as WorkPacks;
    expect(new Ajv2020({ strict: true, allowUnionTypes: true }).validate(WORK_PACKS_SCHEMA, document)).toBe(true);
    const [held] = document.heldBack;
    expect(held?.reasons[0]).toMatchObject({ cause: "never-undecided", rule: "isolation-possible" });
    expect(document.heldBack).toMatchObject([{ point: "A-3" }]);
  });

  it("says everything that is printed as JSON, the same again", async () => {
    const [one, other] = [await full("--json"), await full("--json")];
    expect(one.code).toBe(0);
    expect(one.out).toBe(other.out);
    const { packs, heldBack } = JSON.parse(one.out) as WorkPacks;
    expect([packs.length, heldBack.map(({ point }) => point)]).toEqual([1, ["A-2", "A-3"]]);
  });

  it("says once that the default set asks too little, and writes nothing", async () => {
    const { code, out, err } = await runCommand("work-packs", here("survey.csv"), "--out", here("none"));
    expect([code, out]).toEqual([2, ""]);
    expect(err.split("\n").filter((line) => line !== "")).toHaveLength(1);
    expect(err).toContain("screen with --set full");
    expect(existsSync(here("none"))).toBe(false);
  });

  it("replaces nothing unless told to, and never leaves packs that are released no more among new ones", async () => {
    const out = here("again");
    expect((await full("--out", out)).code).toBe(0);
    const refused = await full("--out", out);
    expect([refused.code, refused.out]).toEqual([2, ""]);
    expect((await full("--out", out, "--overwrite")).code).toBe(0);
    writeFileSync(join(out, "work-pack.2026-01-01-p-9.html"), "old");
    const old = await full("--out", out, "--overwrite");
    expect(old.code).toBe(2);
    expect(old.err).toContain("work-pack.2026-01-01-p-9.html");
    expect(old.err).toContain("may not be released any more");
    expect(readFileSync(join(out, "work-pack.2026-01-01-p-9.html"), "utf8")).toBe("old");
  });

  it("needs to be told where to", async () => {
    const { code, err } = await full();
    expect(code).toBe(2);
    expect(err).toContain("--out FOLDER, or --json");
  });
});
