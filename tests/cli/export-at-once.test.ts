import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setImmediate as turn } from "node:timers/promises";
import { afterEach, beforeEach, expect, it } from "vitest";
import {
  type ExportReceipt,
  exportedStateText,
  exportReceiptText,
  readExportedState,
} from "../../src/handover/index.js";
import { acceptedState, fileOf, receiptOf } from "../handover/difference/made.js";
import { runCommand } from "../tools/run-command.js";

let folder = "";
const here = (name: string): string => join(folder, name);
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "spotface-at-once-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const BEFORE = acceptedState([fileOf([["id-a", "K1", "pass", "one"]])]);

function put(name: string, receipt: ExportReceipt): string {
  writeFileSync(here(name), [...exportReceiptText(receipt)].join(""));
  return here(name);
}

it("of two acceptances at once into one state, one counts and the other is told to run again", async () => {
  const state = here("state.json");
  for (const before of [BEFORE, null]) {
    if (before === null) rmSync(state);
    else writeFileSync(state, [...exportedStateText(before)].join(""));
    const receipts = ["two", "three"].map((text) =>
      put(`${text}.json`, receiptOf([fileOf([["id-a", "K1", "warn", text]])], before)),
    );
    const runs = await Promise.all(receipts.map((receipt) => runCommand("accept-export", receipt, "--state", state)));
    const [lost, won] = runs.toSorted((a, b) => b.err.length - a.err.length);
    expect(won).toMatchObject({ err: "" });
    expect(lost).toMatchObject({ code: 2, out: "" });
    expect(lost?.err).toMatch(/another run has|it was made against another state|it is of an export of all rows/);
    const reading = readExportedState(readFileSync(state, "utf8"));
    expect(reading.ok && reading.stored.accepted.length).toBe((before?.accepted.length ?? 0) + 1);
    expect(readdirSync(folder).sort()).toEqual(["state.json", "three.json", "two.json"]);
  }
});

it("an export whose state moves on meanwhile writes nothing: it could not be accepted", async () => {
  writeFileSync(here("survey.csv"), "Point ID,Speed (rpm)\nP-1,1480\n");
  writeFileSync(
    here("mapping.yaml"),
    'mapping: trial\nversion: "1"\ntitle: t\ntargets:\n  - target: points\n    withdrawn: { column: State, value: gone }\n    columns:\n' +
      "      - { heading: Key, field: point, key: true }\n      - { heading: State, field: verdict }\n",
  );
  const args = ["export", here("survey.csv"), "--mapping", here("mapping.yaml"), "--site", "North", "--set", "core"];
  expect(await runCommand(...args, "--out", here("first"))).toMatchObject({ code: 0 });
  const state = here("state.json");
  const accepted = await runCommand("accept-export", here("first/export-receipt.json"), "--state", state);
  expect(accepted).toMatchObject({ err: "" });
  const run = runCommand(...args, "--out", here("second"), "--since", state);
  // The folder is made when all has been read and compared.
  while (!existsSync(here("second"))) await turn();
  writeFileSync(state, `${readFileSync(state, "utf8")}\n`);
  const { code, out, err } = await run;
  expect({ code, out }).toEqual({ code: 2, out: "" });
  expect(err).toBe(
    `spotface: ${state}: another run has changed it since this one looked at it; nothing is written, run again\n`,
  );
  expect(readdirSync(here("second"))).toEqual([]);
});
