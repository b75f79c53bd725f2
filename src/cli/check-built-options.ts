import { z } from "zod";
import { isPlainDay } from "../base/index.js";
import { OVER } from "./over-option.js";
import { READING_OPTIONS, type ReadingChosen } from "./reading-options.js";
import { RUN_OPTIONS } from "./screen-options.js";
import { TRUST_OPTION } from "./trusted-book.js";

/** Options of `spotface check-built` as they come from the command line. */
export const CHECK_BUILT_OPTIONS = z
  .object({
    ...READING_OPTIONS,
    built: z.array(z.string()).optional(),
    builtColumns: z.string().optional(),
    issued: z.string().optional(),
    json: z.boolean().default(false),
    overwrite: z.boolean().default(false),
    set: z.string().optional(),
    asOf: z.string().refine(isPlainDay, { message: "expected a day that exists, written YYYY-MM-DD" }).optional(),
    site: z.string().trim().min(1, "a site's name cannot be empty").optional(),
    siteFile: z.string().optional(),
    rules: z.string().optional(),
    over: OVER,
    ...TRUST_OPTION,
    csv: z.string().optional(),
    result: z.string().optional(),
    failOn: z.enum(["recall", "difference"]).optional(),
  })
  .strict()
  .refine((options) => options.builtColumns === undefined || options.built !== undefined, {
    message: "--built-columns is for the surveys given with --built; give those, too",
  });

/** The same, checked. */
export type CheckBuiltOptions = z.infer<typeof CHECK_BUILT_OPTIONS>;

/** What a call of the library may say of how proposal and built survey are compared. */
export const CHECK_BUILT_CALL = RUN_OPTIONS.omit({ stage: true, allFindings: true }).extend({
  built: z.array(z.string()).optional(),
  builtColumns: z.string().optional(),
  issued: z.string().optional(),
});

/** How the built surveys are read: as the proposed ones, but for a column file of their own. */
export function builtReading<Chosen extends ReadingChosen>(chosen: Chosen, builtColumns: string | undefined): Chosen {
  return builtColumns === undefined ? chosen : { ...chosen, columns: builtColumns };
}
