import { spawnSync } from "node:child_process";
import { cpSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { CLI, contentsOf, PROJECT, run, temporaryFolder } from "./tools.js";

const folder = temporaryFolder();
const here = (name: string): string => join(folder, name);
const STATE = here("state.json");
const RECEIPT = "export-receipt.json";
const WATCH = ["--import", `${PROJECT}tests/full/dies-at.mjs`];

const mapping = readFileSync(`${PROJECT}tests/full/postgres-mapping.yaml`, "utf8");
writeFileSync(here("mapping.yaml"), mapping.replace("{target}.csv", "{target}.xlsx"));

/** A survey of these points, sorted as they stand here. */
function survey(name: string, points: readonly (readonly [point: string, diameter: number])[]): string {
  const rows = points.map(
    ([point, diameter]) => `${point},T-${point.slice(-1)},Pump ${point.slice(-1)},cast iron,${diameter}`,
  );
  writeFileSync(here(name), `Point ID,Asset tag,Machine,Material,Flat diameter (mm)\n${rows.join("\n")}\n`);
  return here(name);
}

const FIRST = survey("first.csv", [
  ["P-1", 40],
  ["P-2", 40],
  ["P-3", 14],
]);
const LATER = survey("later.csv", [
  ["P-3", 40],
  ["P-4", 40],
  ["P-1", 40],
]);

function args(file: string, out: string, ...more: readonly string[]): readonly string[] {
  const site = ["--site", "North", "--as-of", "2026-11-26", "--set", "core", "--overwrite"];
  return [CLI, "export", file, "--mapping", here("mapping.yaml"), "--out", out, ...site, ...more];
}

const accept = (receipt: string, state: string): readonly string[] => [CLI, "accept-export", receipt, "--state", state];

function done(call: readonly string[], env: Readonly<Record<string, string>> = {}): string {
  const ended = run(process.execPath, call, { env });
  expect(ended.status, ended.err).toBe(0);
  return ended.out;
}

done(args(FIRST, here("old")));
done(accept(join(here("old"), RECEIPT), STATE));
done(args(LATER, here("new"), "--since", STATE));
const STATE_TEXT = readFileSync(STATE, "utf8");

type Files = Readonly<Record<string, string>>;
const isTemporary = (name: string): boolean => name.endsWith(".tmp");
const filesIn = (out: string): Files =>
  Object.fromEntries(readdirSync(out).map((name) => [name, readFileSync(join(out, name), "latin1")]));
const [OLD, NEW] = [filesIn(here("old")), filesIn(here("new"))];

/** Runs a command that dies at each of its steps in turn; calls back after each death. */
function dyingAtEach(call: readonly string[], prepare: () => void, look: (when: string) => void): number {
  prepare();
  const undisturbed = run(process.execPath, [...WATCH, ...call]);
  const steps = Number(/steps:(\d+)/.exec(undisturbed.err)?.[1]);
  for (let step = 1; step <= steps; step++) {
    prepare();
    const env = { ...process.env, DIES_AT: String(step) };
    expect(spawnSync(process.execPath, [...WATCH, ...call], { env }).signal, `step ${step}`).toBe("SIGKILL");
    look(`killed at step ${step}`);
  }
  return steps;
}

describe("an export that is killed", () => {
  it("leaves every file old or new as a whole, the receipt last, and the state as it was", () => {
    const out = here("out");
    const generations = new Set<string>();
    const steps = dyingAtEach(
      args(LATER, out, "--since", STATE),
      () => {
        rmSync(out, { recursive: true, force: true });
        cpSync(here("old"), out, { recursive: true });
      },
      (when) => {
        const found = filesIn(out);
        expect(
          Object.keys(found).filter((name) => !isTemporary(name)),
          when,
        ).toEqual(Object.keys(OLD));
        const isNew = Object.keys(OLD).map((name) => {
          expect(found[name] === OLD[name] || found[name] === NEW[name], `${name}, ${when}`).toBe(true);
          return found[name] !== OLD[name];
        });
        if (found[RECEIPT] === NEW[RECEIPT]) {
          for (const name of Object.keys(NEW)) expect(found[name] === NEW[name], `${name}, ${when}`).toBe(true);
        } else if (isNew.includes(true)) {
          // A set that is neither old nor new is noticed by its receipt.
          expect(run(process.execPath, [CLI, "check-export", join(out, RECEIPT)]).status, when).toBe(1);
        }
        generations.add(isNew.join());
        expect(readFileSync(STATE, "utf8"), when).toBe(STATE_TEXT);
      },
    );
    expect(steps).toBeGreaterThan(15);
    expect(generations.size).toBeGreaterThan(2);
    done(args(LATER, out, "--since", STATE));
    expect(filesIn(out)).toEqual(NEW);
  }, 900_000);

  it("is accepted wholly or not at all", () => {
    const state = here("moving.json");
    done(accept(join(here("new"), RECEIPT), STATE));
    const moved = readFileSync(STATE, "utf8");
    writeFileSync(STATE, STATE_TEXT);
    expect(moved).not.toBe(STATE_TEXT);
    const steps = dyingAtEach(
      accept(join(here("new"), RECEIPT), state),
      () => writeFileSync(state, STATE_TEXT),
      (when) => expect([STATE_TEXT, moved].includes(readFileSync(state, "utf8")), when).toBe(true),
    );
    expect(steps).toBeGreaterThan(4);
  }, 300_000);
});

describe("an export elsewhere", () => {
  const ZONES = ["America/Lima", "Pacific/Auckland"];
  const LOCALES = ["C", "de_DE.UTF-8", "tr_TR.UTF-8"];

  it.for(ZONES.flatMap((zone) => LOCALES.map((lang) => ({ zone, lang }))))(
    "is the same bytes in the time zone $zone under LANG=$lang, and differs in nothing",
    ({ zone, lang }, { skip }) => {
      const env = { TZ: zone, LANG: lang, LC_ALL: lang };
      const asked = "const o = Intl.DateTimeFormat().resolvedOptions(); console.log(o.timeZone, o.locale.slice(0, 2))";
      const said = run(process.execPath, ["-e", asked], { env }).out.trim();
      if (said !== `${zone} ${lang === "C" ? "en" : lang.slice(0, 2)}`) skip(`Node works with ${said} here`);
      const out = here(`${zone.replace("/", "-")}-${lang}`);
      const files = (name: string): Files => contentsOf(name);
      done(args(FIRST, out), env);
      expect(files(out)).toEqual(files(here("old")));
      const shuffled = survey("shuffled.csv", [
        ["P-3", 14],
        ["P-1", 40],
        ["P-2", 40],
      ]);
      const told = done(args(shuffled, `${out}-since`, "--since", STATE), env);
      expect(told).toMatch(/points +0 +0 +0 +3/);
      expect(told).toMatch(/machines +0 +0 +0 +3/);
    },
  );
});
