import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { sha256OfBytes, sha256OfData } from "../../src/base/index.js";
import { programIdentity } from "../../src/cli/identity.js";
import { openRulebook } from "../../src/cli/open-rulebook.js";
import {
  type ExportedState,
  type ExportReceipt,
  type ExportSource,
  exportReceipt,
  exportReceiptText,
  readExportedState,
} from "../../src/handover/index.js";
import { differences, fileOf, receiptOf, sourceOf } from "../handover/difference/made.js";
import { runCommand } from "../tools/run-command.js";

let folder = "";
const here = (name: string): string => join(folder, name);
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "spotface-accept-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const ROWS = [
  ["id-a", "K1", "pass", "one"],
  ["id-b", "00123", "fail", "two"],
  ["id-c", "K3", "warn", null],
] as const;
const FILES = [fileOf(ROWS)];

function put(name: string, receipt: ExportReceipt): string {
  writeFileSync(here(name), [...exportReceiptText(receipt)].join(""));
  return here(name);
}

function stateHere(): ExportedState {
  const reading = readExportedState(readFileSync(here("state.json"), "utf8"));
  if (!reading.ok) throw new Error(reading.problems.join("\n"));
  return reading.stored;
}

const idsHere = (): readonly string[] => stateHere().targets.flatMap(({ rows }) => rows.map(({ id }) => id));

describe("spotface accept-export", () => {
  it("makes the state of the first export, and refuses the same receipt a second time", async () => {
    const receipt = put("receipt.json", receiptOf(FILES, null));
    const run = await runCommand("accept-export", receipt, "--state", here("state.json"));
    expect(run).toMatchObject({ err: "" });
    expect(run.out).toMatch(/^Accepted: 3 rows of 3\nWritten: state of accepted exports: /);
    const first = readFileSync(here("state.json"));
    expect(idsHere()).toEqual(["id-a", "id-b", "id-c"]);
    const again = await runCommand("accept-export", receipt, "--state", here("state.json"));
    expect(again).toMatchObject({ code: 2, out: "" });
    expect(again.err).toContain("receipt.json: it was accepted already; there is nothing to do");
    expect(readFileSync(here("state.json"))).toEqual(first);
  });

  it("leaves out the rows that came back, by key or by id, from a text table of the other side", async () => {
    const receipt = put("receipt.json", receiptOf(FILES, null));
    writeFileSync(
      here("errors.csv"),
      Buffer.from(
        "Import vom 26.11.;;\r\nZeile;Schlüssel;Meldung\r\n3; 00123 ;gesperrt\r\n\r\n4;id-c;fehlt\r\n3;00123;auch\r\n",
        "latin1",
      ),
    );
    const args = ["--refused", here("errors.csv"), "--key", "Schlüssel", "--encoding", "windows-1252"];
    const run = await runCommand("accept-export", receipt, "--state", here("state.json"), ...args);
    expect(run).toMatchObject({ err: "" });
    expect(run.out).toContain("Accepted: 1 row of 3\nRefused, and sent again with the next export: 2 rows\n");
    expect(run.out).toContain("  points: 00123\n  points: id-c\n");
    expect(idsHere()).toEqual(["id-a"]);
    expect(differences(FILES, stateHere())[0]?.rows.map(({ id }) => id)).toEqual(["id-b", "id-c"]);
  });

  it.each([
    ["Key\nK9\n", 'row 2: "K9" is the key of no row of this export; hand in the list that belongs to this receipt'],
    ["Key;Why\nK1;no\n;too\n", "row 3: it does not say which row was refused; fill in the key, or take the line out"],
    ["Code\nK1\n", 'no row holds the heading "Key"; name the column with --key as the list has it'],
  ])("changes nothing where the list %j does not fit", async (text, said) => {
    const receipt = put("receipt.json", receiptOf(FILES, null));
    writeFileSync(here("errors.csv"), text);
    const list = ["--refused", here("errors.csv"), "--key", "Key"];
    const run = await runCommand("accept-export", receipt, "--state", here("state.json"), ...list);
    expect(run).toMatchObject({ code: 2, out: "" });
    expect(run.err).toContain(`errors.csv: ${said}\n`);
    expect(() => readFileSync(here("state.json"))).toThrow("no such file");
  });

  it("changes nothing where the receipt or the state is none, or is altered", async () => {
    const receipt = put("receipt.json", receiptOf(FILES, null));
    writeFileSync(here("state.json"), "{}");
    const broken = await runCommand("accept-export", receipt, "--state", here("state.json"));
    expect(broken).toMatchObject({ code: 2, out: "" });
    expect(broken.err).toMatch(/state\.json: \/format: .*hand in the state as spotface accept-export wrote it/);
    expect(readFileSync(here("state.json"), "utf8")).toBe("{}");
    writeFileSync(here("receipt.json"), readFileSync(receipt, "utf8").replace('"one"', '"won"'));
    const altered = await runCommand("accept-export", receipt, "--state", here("new.json"));
    expect(altered).toMatchObject({ code: 2 });
    expect(altered.err).toContain("receipt.json: it was changed after it was written");
    const over = await runCommand("accept-export", put("r.json", receiptOf(FILES, null)), "--state", here("r.json"));
    expect(over).toMatchObject({ code: 2 });
    const alone = await runCommand("accept-export", receipt, "--state", here("new.json"), "--key", "Key");
    expect(alone.err).toContain("--refused: --refused and --key belong together");
  });
});

it("says so in one line where state and receipt are mixed up", async () => {
  const receipt = put("receipt.json", receiptOf(FILES, null));
  await runCommand("accept-export", receipt, "--state", here("state.json"));
  const [receiptForm, stateForm] = ['"spotface export receipt 1"', '"spotface exported state 1"'];
  for (const [args, found, wanted] of [
    [["check-export", here("state.json")], stateForm, receiptForm],
    [["accept-export", receipt, "--state", receipt], receiptForm, stateForm],
  ] as const) {
    const run = await runCommand(...args);
    expect(run).toMatchObject({ code: 2, out: "" });
    expect(run.err).toContain(`.json: it is a ${found}, not a ${wanted}; hand in the `);
    expect(run.err.trimEnd()).not.toContain("\n");
  }
});

describe("spotface check-export", () => {
  async function exported(over: Partial<ExportSource> = {}): Promise<string> {
    for (const name of ["points.csv", "survey.csv", "mapping.yaml"]) writeFileSync(here(name), name);
    const digestOf = (name: string): string => sha256OfBytes(readFileSync(here(name)));
    const loading = await openRulebook(null);
    if (!loading.ok) throw new Error("the rulebook does not load");
    const { name, version, digest } = loading.rulebook;
    const source = sourceOf({
      program: programIdentity(),
      rulebook: { name, version, digest, folder: null, over: [] },
      files: [
        { role: "survey", file: here("survey.csv"), digest: digestOf("survey.csv") },
        { role: "mapping", file: here("mapping.yaml"), digest: digestOf("mapping.yaml") },
      ],
      ...over,
    });
    const files = [{ file: "points.csv", digest: digestOf("points.csv") }];
    return put("receipt.json", exportReceipt(differences(FILES, null), null, source, files));
  }

  it("finds nothing to say where all is as it was", async () => {
    const run = await runCommand("check-export", await exported());
    expect(run).toMatchObject({ code: 0, err: "" });
    expect(run.out).toContain("  points: 3 new, 0 changed, 0 withdrawn; 0 not sent\n");
    expect(run.out).toContain("All as the receipt says: 1 file written, 3 inputs\n");
  });

  it("names each file, input, rulebook and program that is another one", async () => {
    const other = { name: "rules", version: "0", digest: sha256OfData("0"), folder: null, over: [] };
    const receipt = await exported({ rulebook: other, program: { name: "spotface", version: "0.0.1" } });
    writeFileSync(here("points.csv"), "points.csv ");
    writeFileSync(here("survey.csv"), "another");
    rmSync(here("mapping.yaml"));
    const run = await runCommand("check-export", receipt);
    expect(run).toMatchObject({ code: 1, err: "" });
    expect(run.out).toMatch(/ {2}points\.csv: it is not as it was written; its digest was \w{64}, and is \w{64}\n/);
    expect(run.out).toMatch(/ {2}survey .*survey\.csv: it is not the one that went in; /);
    expect(run.out).toMatch(/ {2}mapping .*mapping\.yaml: there is no such file or folder; check the path\n/);
    expect(run.out).toMatch(/ {2}rulebook of the program: it is not the one that went in \(version 0\); /);
    expect(run.out).toContain("  program: the export was made by spotface 0.0.1, this is spotface ");
  });

  it("lets the state with which was compared stay or take the export, and nothing else", async () => {
    const receipt = put("first.json", receiptOf(FILES, null));
    await runCommand("accept-export", receipt, "--state", here("state.json"));
    const { digest } = receiptOf(FILES, stateHere());
    expect(digest).toMatch(/^\w{64}$/);
    const since = receiptOf([fileOf(ROWS.slice(1))], stateHere());
    const named = exportReceipt(
      differences([fileOf(ROWS.slice(1))], stateHere()),
      { file: here("state.json"), digest: since.since?.digest ?? "" },
      sourceOf({ files: [] }),
      [],
    );
    const later = put("later.json", named);
    const checked = async (): Promise<string> => (await runCommand("check-export", later)).out;
    expect(await checked()).not.toContain("  state ");
    await runCommand("accept-export", later, "--state", here("state.json"));
    expect(idsHere()).toEqual(["id-b", "id-c"]);
    expect(await checked()).not.toContain("  state ");
    rmSync(here("state.json"));
    expect(await checked()).toMatch(/ {2}state .*: there is no such file or folder/);
    await runCommand("accept-export", receipt, "--state", here("state.json"));
    writeFileSync(here("state.json"), readFileSync(here("state.json"), "utf8").replace('"one"', '"won"'));
    expect(await checked()).toMatch(/ {2}state .*: it is not the one with which was compared, and has not accepted/);
  });
});
