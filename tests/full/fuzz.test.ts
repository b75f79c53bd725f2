import { Worker } from "node:worker_threads";
import { afterAll, describe, expect, it } from "vitest";
import { nodeInflating } from "../../src/disk/index.js";
import { readWorkbook } from "../../src/workbook/index.js";
import { corpusBytes, corpusExists, corpusFiles, xmlParts } from "../workbook/corpus.js";
import { fuzz } from "../workbook/fuzzing.js";
import { anyDamage, dice, packed, WORKBOOKS } from "../workbook/mutations.js";
import { opened, plainSheets } from "../workbook/reading.js";
import { referencePass, scannerPass } from "../workbook/xml-events.js";

const FILES = 100_000;
const LONGEST_SILENCE_SECONDS = 30;

/**
 * A reading that never ends would never let a test fail: a second thread watches the number of the file and ends the
 * process, naming it, when it stands still.
 */
const WATCHER = `
const { workerData } = require("node:worker_threads");
const { writeSync } = require("node:fs");
let last = -1;
setInterval(() => {
  const seed = Atomics.load(workerData.seed, 0);
  if (seed === last && seed > 0) {
    writeSync(2, "\\nthe reader hangs on the file of seed " + seed + "\\n");
    process.kill(process.pid, "SIGKILL");
  }
  last = seed;
}, ${LONGEST_SILENCE_SECONDS * 1_000});
`;

const seed = new Int32Array(new SharedArrayBuffer(4));
const watcher = new Worker(WATCHER, { eval: true, workerData: { seed } });

afterAll(async () => {
  await watcher.terminate();
});

describe("files damaged at random", () => {
  it(`are answered, ${FILES} of them`, async () => {
    const tally = await fuzz([1_000, 999 + FILES], (next) => Atomics.store(seed, 0, next));
    Atomics.store(seed, 0, 0);
    console.log(
      `${tally.opened} open, ${tally.refused} refused, slowest ${(tally.slowest * 1000).toFixed(0)} ms of work`,
    );
    console.log(
      [...tally.codes]
        .sort((a, b) => b[1] - a[1])
        .map(([code, count]) => `${code} ${count}`)
        .join(", "),
    );
    expect(tally.opened).toBeGreaterThan(FILES / 20);
    expect(tally.codes.size).toBeGreaterThan(15);
  });

  it("never read otherwise with one bit changed, wherever it is", async () => {
    const file = packed(WORKBOOKS[0] ?? {});
    const whole = JSON.stringify(plainSheets(await opened(file)));
    for (let bit = 0; bit < 8 * file.length; bit++) {
      const bytes = new Uint8Array(file);
      bytes[bit >> 3] = (bytes[bit >> 3] ?? 0) ^ (1 << (bit & 7));
      const reading = await readWorkbook(bytes, nodeInflating);
      if (reading.ok && reading.workbook.kind === "xlsx") {
        expect(JSON.stringify(plainSheets(reading.workbook)), `bit ${bit}`).toBe(whole);
      }
    }
  });
});

/** What the two passes over the same bytes must have in common. */
function expectAlike(bytes: Uint8Array, pieces: readonly number[], what: string): void {
  const reference = referencePass(bytes);
  const scanned = scannerPass(bytes, pieces);
  // The scanner refuses a document type where it begins, the other only once it ends.
  if (scanned.code === "document-type") expect(reference.code, what).not.toBe("whole");
  else expect(scanned.code, what).toBe(reference.code);
  if (reference.code === "whole" && scanned.events.join("\n") !== reference.events.join("\n")) {
    expect(scanned.events, what).toEqual(reference.events);
  }
}

describe("the scanner and the reference parser", () => {
  it("agree on 30,000 damaged parts", () => {
    const parts = WORKBOOKS.flatMap((workbook) => Object.values(workbook));
    for (let number = 1; number <= 30_000; number++) {
      const roll = dice(number);
      const part = parts[roll(parts.length)] ?? new Uint8Array(0);
      const bytes = anyDamage(part, roll, parts);
      expectAlike(bytes, [1 + roll(60), 1 + roll(7)], `number ${number}`);
    }
  });

  it.skipIf(!corpusExists("workbooks")).each(corpusFiles("workbooks").filter(({ file }) => file.endsWith(".xlsx")))(
    "agree on every part of $file",
    async ({ file }) => {
      for (const bytes of await xmlParts(corpusBytes("workbooks", file))) expectAlike(bytes, [65_536, 4_099], file);
    },
  );
});
