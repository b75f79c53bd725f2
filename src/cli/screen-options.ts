import { z } from "zod";
import { isPlainDay, STAGES } from "../base/index.js";
import type { ReadingLimits } from "../workbook/index.js";
import { LIBRARY_LIMITS, LIBRARY_READING, READING_OPTIONS, type ReadingChosen } from "./reading-options.js";

const day = z.string().refine(isPlainDay, { message: "expected a day that exists, written YYYY-MM-DD" });

const stage = z.enum(STAGES as ["proposed", "installed"]);
const siteName = z.string().trim().min(1, "a site's name cannot be empty");

/** What a call of the library may say of how a run is made; checked as strictly as the command line. */
export const RUN_OPTIONS = z
  .object({
    rules: z.string(),
    set: z.string(),
    stage,
    asOf: day,
    siteName,
    siteFile: z.string(),
    allFindings: z.boolean(),
    ...LIBRARY_READING,
    reading: z
      .object({ encoding: z.string(), separator: z.string(), limits: LIBRARY_LIMITS, onProgress: z.unknown() })
      .partial()
      .strict(),
  })
  .partial()
  .strict();

/** What a call of the library says of the reading, as the command line would. */
export function readingChosen({ reading = {}, ...options }: z.infer<typeof RUN_OPTIONS>): ReadingChosen {
  const { columns, words = [], language, decimal, column = [] } = options;
  const { encoding, separator, limits = {} } = reading;
  const limit = Object.entries(limits) as [keyof ReadingLimits, number][];
  return { columns, words, language, decimal, column, limit, encoding, separator };
}

/** Options of `spotface screen` as they come from the command line. */
export const SCREEN_OPTIONS = z
  .object({
    json: z.boolean().default(false),
    ndjson: z.boolean().default(false),
    allFindings: z.boolean().default(false),
    audit: z.boolean().default(false),
    overwrite: z.boolean().default(false),
    skipUnreadable: z.boolean().default(false),
    set: z.string().optional(),
    stage: stage.default("proposed"),
    asOf: day.optional(),
    site: siteName.optional(),
    siteFile: z.string().optional(),
    rules: z.string().optional(),
    out: z.string().optional(),
    workbook: z.string().optional(),
    csv: z.string().optional(),
    findings: z.string().optional(),
    result: z.string().optional(),
    failOn: z.enum(["fail", "warn", "undecided"]).optional(),
    ...READING_OPTIONS,
  })
  .strict()
  .refine((options) => !(options.json && options.ndjson), { message: "give --json or --ndjson, not both" });

/** The same, checked. */
export type ScreenOptions = z.infer<typeof SCREEN_OPTIONS>;

/** Every mistake in the options, one line each. */
export function optionMistakes(error: z.ZodError): string {
  return error.issues
    .map(({ path, message }) => {
      const name = String(path[0] ?? "").replace(/[A-Z]/g, (c) => `-${c.toLowerCase()}`);
      return `spotface: ${name === "" ? "" : `--${name}: `}${message}\n`;
    })
    .join("");
}
