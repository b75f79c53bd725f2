import { z } from "zod";
import { isPlainDay, STAGES } from "../base/index.js";

const day = z.string().refine(isPlainDay, { message: "expected a day that exists, written YYYY-MM-DD" });

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
    stage: z.enum(STAGES as ["proposed", "installed"]).default("proposed"),
    asOf: day.optional(),
    site: z.string().trim().min(1, "a site's name cannot be empty").optional(),
    siteFile: z.string().optional(),
    rules: z.string().optional(),
    out: z.string().optional(),
    workbook: z.string().optional(),
    csv: z.string().optional(),
    findings: z.string().optional(),
    result: z.string().optional(),
    failOn: z.enum(["fail", "warn", "undecided"]).optional(),
    encoding: z.string().optional(),
    separator: z.string().optional(),
  })
  .strict()
  .refine((options) => !(options.json && options.ndjson), { message: "give --json or --ndjson, not both" });

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
