import { z } from "zod";
import { isPlainDay, readQuantity, STAGES } from "../base/index.js";
import { factOf } from "../facts/index.js";
import type { NumberPlace } from "../moving/index.js";
import { OVER } from "./over-option.js";
import { READING_OPTIONS } from "./reading-options.js";
import { TRUST_OPTION } from "./trusted-book.js";

/** Options of `spotface move-limit` as they come from the command line. */
export const MOVE_LIMIT_OPTIONS = z
  .object({
    ...READING_OPTIONS,
    rule: z.string(),
    bound: z.string().optional(),
    ...TRUST_OPTION,
    model: z.string().optional(),
    from: z.string().optional(),
    to: z.string().optional(),
    step: z.string().optional(),
    atChanges: z.boolean().default(false),
    json: z.boolean().default(false),
    overwrite: z.boolean().default(false),
    csv: z.string().optional(),
    chart: z.string().optional(),
    set: z.string().optional(),
    stage: z.enum(STAGES as ["proposed", "installed"]).default("proposed"),
    asOf: z.string().refine(isPlainDay, { message: "expected a day that exists, written YYYY-MM-DD" }).optional(),
    site: z.string().trim().min(1, "a site's name cannot be empty").optional(),
    siteFile: z.string().optional(),
    rules: z.string().optional(),
    over: OVER,
  })
  .strict();

/** The same, checked. */
export type MoveLimitOptions = z.infer<typeof MOVE_LIMIT_OPTIONS>;

const BARE = /^[+-]?\d{1,15}(?:\.\d{1,12})?$/;

/**
 * A number of an option in the unit of the place: bare, or with a unit.
 *
 * @returns a sentence where it is none
 */
export function placeNumber(
  option: "from" | "to" | "step",
  text: string | undefined,
  { moves, fact, unit, bound }: NumberPlace,
): number | null | string {
  if (text === undefined) return null;
  if (BARE.test(text.trim())) return Number(text.trim());
  const { dimension } = factOf(moves === "model value" && bound.kind === "fact" ? bound.fact : fact);
  const inUnit = unit === null ? "" : ` in ${unit}`;
  // A step of a temperature is a difference, which its units do not convert.
  const isDifference = dimension === "temperature" && (option === "step" || moves === "shift");
  if (moves === "factor" || unit === null || dimension === undefined || isDifference) {
    return `--${option}: "${text}" is no bare number${inUnit}; write it with a decimal point`;
  }
  const number = readQuantity(text, dimension, unit);
  return typeof number === "number" ? number : `--${option}: ${number.text}`;
}
