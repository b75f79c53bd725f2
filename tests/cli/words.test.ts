import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { screenFiles } from "../../src/index.js";
import { runCommand } from "../tools/run-command.js";

const folder = mkdtempSync(join(tmpdir(), "words-"));
let count = 0;

function written(text: string, ending: string): string {
  count += 1;
  const path = join(folder, `f${count}.${ending}`);
  writeFileSync(path, text);
  return path;
}

const WORDS = `fields:
  hole_depth: { headings: { de: ["Loch tief"] } }
  mounting_method:
    headings: { de: ["Halterung am Ort"] }
    choices: { tapped-hole: ["M6 drin"] }
`;
const SURVEY =
  "Messstelle;Maschine;Loch tief (mm);Halterung am Ort\nK 1;Pumpe;16,5;M6 drin\nK 2;Pumpe;1,6 cm;Klebepad\n";

async function facts(...words: readonly string[]): Promise<readonly unknown[]> {
  const run = await screenFiles([written(SURVEY, "csv")], { asOf: "2026-11-25", allFindings: true, words });
  if (!run.ok) throw new Error(JSON.stringify(run.findings));
  return run.screening.head.surveys.flatMap(({ columns }) => columns.map((column) => column.facts[0] ?? null));
}

async function refusal(text: string, more: readonly string[] = []): Promise<string> {
  const path = written(text, "yaml");
  const run = await runCommand(
    "screen",
    written(SURVEY, "csv"),
    ...more.flatMap((one) => ["--words", one]),
    "--words",
    path,
  );
  expect(run.code).toBe(2);
  return run.err.replaceAll(path, "w.yaml");
}

describe("words that a site adds", () => {
  it("are read like those of the rulebook, and stand in the result", async () => {
    expect(await facts()).toEqual(["point_id", "machine_name", null, null]);
    const path = written(WORDS, "yaml");
    expect(await facts(path)).toEqual(["point_id", "machine_name", "hole_depth", "mounting_method"]);
    const run = await runCommand("screen", written(SURVEY, "csv"), "--words", path, "--json", "--all-findings");
    const { reading, digest, points } = JSON.parse(run.out);
    expect(reading.wordFiles).toEqual([{ file: path, digest: expect.stringMatching(/^[0-9a-f]{64}$/) }]);
    expect(digest).toMatch(/^[0-9a-f]{64}$/);
    const depths = points.map((point: { findings: { rule: string; facts: { value: unknown }[] }[] }) =>
      point.findings.filter(({ rule }) => rule === "hole-depth").map((one) => one.facts[0]?.value),
    );
    expect(depths[0]).toEqual([16.5]);
  });

  it("may come from several files, and may say again what is known", async () => {
    const one = written('fields: { hole_depth: { headings: { de: ["Loch tief", "Bohrtiefe"] } } }', "yaml");
    const two = written('fields: { mounting_method: { headings: { de: ["Halterung am Ort"] } } }', "yaml");
    expect(await facts(one, two)).toEqual(["point_id", "machine_name", "hole_depth", "mounting_method"]);
  });

  it.each([
    [
      "a heading of another fact",
      'fields: { thread_depth: { headings: { de: ["Bohrtiefe"] } } }',
      /w\.yaml:1:44: "Bohrtiefe" means a heading of hole_depth already \(rules\/words\/[a-z-]+\.yaml:\d+:\d+\)/,
    ],
    [
      "a word of another choice",
      'fields: { mounting_method: { choices: { magnet: ["tapped hole"] } } }',
      /w\.yaml:1:50: "tapped hole" means tapped-hole of mounting_method already \(rules\/words\//,
    ],
    [
      "the same word with another ending",
      'fields: { mounting_method: { choices: { magnet: ["Klebepads"] } } }',
      /"Klebepads" means adhesive-pad of mounting_method already/,
    ],
    ["an unknown choice", 'fields: { mounting_method: { choices: { magnets: ["x"] } } }', /did you mean "magnet"/],
    ["an unknown fact", 'fields: { hole_depht: { headings: { de: ["x"] } } }', /did you mean "hole_depth"/],
    ["common words", "common: { yes: [oui] }", /w\.yaml:1:/],
    [
      "examples, which nothing runs",
      'fields: { hole_depth: { headings: { de: ["x"] }, examples: [{ heading: x, cell: 1, locale: de, expect: { value: 1 } }] } }',
      /w\.yaml:1:50: examples are run by the tests of the rulebook alone/,
    ],
    ["nothing", "", /the file is empty/],
  ])("are refused with %s, both places named", async (_name, text, sentence) => {
    expect(await refusal(text)).toMatch(sentence);
  });

  it("are refused where two files of the site contradict each other", async () => {
    const one = written('fields: { hole_depth: { headings: { de: ["Loch tief"] } } }', "yaml");
    const text = await refusal('fields: { thread_depth: { headings: { de: ["LOCH TIEF"] } } }', [one]);
    expect(text).toContain(`"LOCH TIEF" means a heading of hole_depth already (${one}:1:42)`);
  });

  it("are refused where one file contradicts itself", async () => {
    const text =
      'fields: { hole_depth: { headings: { de: ["Loch tief"] } }, thread_depth: { headings: { de: ["Loch tief"] } } }';
    expect(await refusal(text)).toContain('"Loch tief" means a heading of');
  });
});
