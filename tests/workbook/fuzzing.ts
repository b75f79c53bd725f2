import { nodeInflating } from "../../src/disk/index.js";
import { readWorkbook } from "../../src/workbook/index.js";
import { leastWork } from "../tools/work.js";
import {
  type Dice,
  damagedFile,
  damagedParts,
  damagedText,
  dice,
  type Mutation,
  packed,
  TEXTS,
  WORKBOOKS,
} from "./mutations.js";
import { isSentence, opened, plainSheets } from "./reading.js";

/** Work of the processor; no small file takes more, on the slowest machine. */
const MOST_SECONDS = 5;

/** What came out of many readings. */
export interface Tally {
  readonly opened: number;
  readonly refused: number;
  /** How often each code came. */
  readonly codes: ReadonlyMap<string, number>;
  /** Seconds of work. */
  readonly slowest: number;
}

/**
 * Reads damaged files, each from a seed of its own, so that a failure can be seen again alone.
 *
 * @param seeds - first and last seed
 * @param onFile - told before each file
 * @throws Error that names the seed, if a reading throws, takes too long, is no sentence or hides the damage
 */
export async function fuzz(
  seeds: readonly [number, number],
  onFile: (seed: number) => void = () => {},
): Promise<Tally> {
  const files = WORKBOOKS.flatMap((parts) => [packed(parts), packed(parts, 0)]);
  const whole = await Promise.all(files.map(async (file) => JSON.stringify(plainSheets(await opened(file)))));
  const codes = new Map<string, number>();
  let slowest = 0;
  for (let seed = seeds[0]; seed <= seeds[1]; seed++) {
    onFile(seed);
    const roll = dice(seed);
    const index = roll(files.length);
    const mutation = mutate(roll, files, index);
    const done = await leastWork(MOST_SECONDS, () => outcome(seed, mutation, whole[index] ?? ""));
    const { result: code, seconds } = done;
    slowest = Math.max(slowest, seconds);
    if (slowest > MOST_SECONDS) throw new Error(`seed ${seed}: took ${slowest.toFixed(1)} s of work`);
    codes.set(code, (codes.get(code) ?? 0) + 1);
  }
  const read = codes.get("opens") ?? 0;
  return { opened: read, refused: seeds[1] - seeds[0] + 1 - read, codes, slowest };
}

function mutate(roll: Dice, files: readonly Uint8Array[], index: number): Mutation {
  const kind = roll(10);
  if (kind < 3) return damagedFile(files[index] ?? new Uint8Array(0), files, roll);
  if (kind < 9) return damagedParts(WORKBOOKS[index >> 1] ?? {}, roll);
  return damagedText(TEXTS[roll(TEXTS.length)] ?? new Uint8Array(0), roll);
}

async function outcome(seed: number, { bytes, must }: Mutation, whole: string): Promise<string> {
  const reading = await readWorkbook(bytes, nodeInflating).catch((error: unknown) => {
    throw new Error(`seed ${seed}: threw ${String(error)}`, { cause: error });
  });
  if (!reading.ok) {
    if (!isSentence(reading.error.text)) throw new Error(`seed ${seed}: not fit for people: ${reading.error.text}`);
    return reading.error.code;
  }
  // Every row is unpacked, so that what is kept as bytes is looked at too.
  const sheets = JSON.stringify(plainSheets(reading.workbook));
  if (must === "refused") throw new Error(`seed ${seed}: a file without its end opens`);
  if (must === "same or refused" && sheets !== whole) throw new Error(`seed ${seed}: damage goes unnoticed`);
  return "opens";
}
