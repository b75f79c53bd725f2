import { z } from "zod";
import { isPlainDay, STAGES } from "../base/index.js";
import type { ReadingLimits } from "../workbook/index.js";
import { OVER } from "./over-option.js";
import { LIBRARY_LIMITS, LIBRARY_READING, READING_OPTIONS, type ReadingChosen } from "./reading-options.js";
import { TRUST_OPTION } from "./trusted-book.js";

const day = z.string().refine(isPlainDay, { message: "expected a day that exists, written YYYY-MM-DD" });

const stage = z.enum(STAGES as ["proposed", "installed"]);
const siteName = z.string().trim().min(1, "a site's name cannot be empty");

/** Ten years; who wants to know of all that end, asks for more than any is accepted for. */
const days = z
  .int("expected a whole number of days")
  .nonnegative("expected no less than 0 days")
  .max(3650, "expected at most 3650 days");

/** What a call of the library may say of how a run is made; checked as strictly as the command line. */
export const RUN_OPTIONS = z
  .object({
    rules: z.string(),
    over: z.array(z.string()),
    trust: z.array(z.string()),
    set: z.string(),
    stage,
    asOf: day,
    siteName,
    siteFile: z.string(),
    deviations: z.string(),
    endingWithin: days,
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
    deviations: z.string().optional(),
    endingWithin: z
      .string()
      .regex(/^\d{1,6}$/, "expected a whole number of days")
      .transform(Number)
      .pipe(days)
      .optional(),
    rules: z.string().optional(),
    over: OVER,
    ...TRUST_OPTION,
    out: z.string().optional(),
    workbook: z.string().optional(),
    csv: z.string().optional(),
    findings: z.string().optional(),
    result: z.string().optional(),
    report: z.string().optional(),
    failOn: z.enum(["fail", "warn", "undecided"]).optional(),
    ...READING_OPTIONS,
  })
  .strict()
  .refine((options) => !(options.json && options.ndjson), { message: "give --json or --ndjson, not both" })
  .refine((options) => options.endingWithin === undefined || options.deviations !== undefined, {
    path: ["endingWithin"],
    message: "it speaks of accepted deviations; give their file with --deviations",
  });

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
