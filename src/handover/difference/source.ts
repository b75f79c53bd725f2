import { z } from "zod";
import { isPlainDay, STAGES } from "../../base/index.js";

/** SHA-256, lower-case hexadecimal. */
export const DIGEST = z.string().regex(/^[0-9a-f]{64}$/, "expected a SHA-256 digest, 64 hexadecimal digits");

/** What a file is to an export. */
export const FILE_ROLES = ["survey", "site file", "deviations", "column file", "word file", "mapping"] as const;

/** Everything that an export was made from. */
export const EXPORT_SOURCE = z
  .strictObject({
    program: z
      .strictObject({ name: z.string().describe("its name"), version: z.string().describe("its version") })
      .describe("name and version of the program"),
    asOf: z.string().refine(isPlainDay, "expected a day that exists, written YYYY-MM-DD").describe("day of the limits"),
    stage: z.enum(STAGES).describe("whether points were proposed or built"),
    set: z.string().describe("set of rules that was asked"),
    site: z.string().nullable().describe("name of the site, where an option gave it"),
    options: z.array(z.string()).describe("options on reading the surveys, as written"),
    rulebook: z
      .strictObject({
        name: z.string().describe("its name"),
        version: z.string().describe("its version"),
        digest: DIGEST.describe("digest of all that was loaded of it"),
        over: z.array(z.string()).describe("folders laid over it, as given, the lowest first"),
        folder: z.string().nullable().describe("folder as given; null for the one that comes with the program"),
      })
      .describe("rulebook by which the points were judged"),
    files: z
      .array(
        z.strictObject({
          role: z.enum(FILE_ROLES).describe("what the file is to the export"),
          file: z.string().describe("path as given, with /"),
          digest: DIGEST.describe("SHA-256 of its bytes"),
        }),
      )
      .describe("every file that went in beside the rulebook"),
  })
  .describe("everything that the export was made from");

export type ExportSource = z.infer<typeof EXPORT_SOURCE>;

/** Why a row may say something else than before, in the order in which causes are named. */
export const CAUSES = [
  "refused before",
  "survey",
  "site",
  "deviations",
  "mapping",
  "rulebook",
  "rules asked",
  "day",
  "program",
] as const;

export type Cause = (typeof CAUSES)[number];

/**
 * What is not the same in two exports, and so may have changed a row. One cause alone is the cause; of several it is not
 * known which, unless more is known of the row.
 *
 * @returns in the order of `CAUSES`
 */
export function causesBetween(before: ExportSource, now: ExportSource): readonly Cause[] {
  const differs: Partial<Record<Cause, boolean>> = {
    survey:
      ["survey", "column file", "word file"].some((role) => !sameFiles(before, now, role)) ||
      !same(before, now, "options"),
    site: !sameFiles(before, now, "site file") || before.site !== now.site,
    deviations: !sameFiles(before, now, "deviations"),
    mapping: !sameFiles(before, now, "mapping"),
    rulebook: before.rulebook.digest !== now.rulebook.digest,
    "rules asked": before.set !== now.set || before.stage !== now.stage,
    day: before.asOf !== now.asOf,
    program: !same(before, now, "program"),
  };
  return CAUSES.filter((cause) => differs[cause] === true);
}

function same(before: ExportSource, now: ExportSource, key: "options" | "program"): boolean {
  return JSON.stringify(before[key]) === JSON.stringify(now[key]);
}

/** Same contents, under whatever name and in whatever order. */
function sameFiles(before: ExportSource, now: ExportSource, role: string): boolean {
  const digests = ({ files }: ExportSource): string =>
    files
      .filter((file) => file.role === role)
      .map(({ digest }) => digest)
      .sort()
      .join();
  return digests(before) === digests(now);
}

/** Surveys of an earlier export that are not among those of a later one, neither by name nor by contents. */
export function surveysLeftOut(before: ExportSource, now: ExportSource): readonly string[] {
  const surveys = now.files.filter(({ role }) => role === "survey");
  const isThere = (one: ExportSource["files"][number]): boolean =>
    surveys.some(({ file, digest }) => file === one.file || digest === one.digest);
  return before.files.filter((one) => one.role === "survey" && !isThere(one)).map(({ file }) => file);
}
