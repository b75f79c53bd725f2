import type { TextFile } from "../../base/index.js";
import type { FileFinding } from "../book/rulebook.js";
import type { JsonSchema } from "../schemas/index.js";
import { checkSchema } from "../text/check-schema.js";
import type { FileLimits } from "../text/file-limits.js";
import { readYaml } from "../text/read-yaml.js";
import { Report } from "../text/source.js";

/** A YAML file that has the form of its schema, or what is wrong with it. */
export type CheckedFile =
  | {
      readonly ok: true;
      /** As the schema lets it through; what it means is still to be checked. */
      readonly data: unknown;
      /** Adds to `findings`, with line and column. */
      readonly report: Report;
      readonly findings: readonly FileFinding[];
    }
  | { readonly ok: false; readonly findings: readonly FileFinding[] };

/** Reads a YAML file that another station gives its meaning to, and holds it to a schema. */
export function readCheckedFile(file: TextFile, schema: JsonSchema, limits: FileLimits): CheckedFile {
  const reading = readYaml(file, limits);
  if (!reading.ok) return reading;
  const findings: FileFinding[] = [];
  const report = new Report(reading.source, findings);
  if (!checkSchema(reading.source, schema, report)) return { ok: false, findings };
  return { ok: true, data: reading.source.data, report, findings };
}
