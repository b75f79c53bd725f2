import { DEVIATIONS } from "./deviation-parts.js";
import { FINDING_PARTS } from "./finding-parts.js";
import { GROUP_PARTS } from "./group-parts.js";
import { HEAD_PARTS } from "./head-parts.js";
import { RULEBOOK_SHOWN } from "./overlay-parts.js";
import {
  DAY,
  defined,
  exactly,
  form,
  formOrNull,
  listOf,
  oneOfWords,
  type SchemaPart,
  SHA256,
  text,
  textOrNull,
} from "./schema-words.js";

const FILE_READ = exactly("A file of settings.", {
  file: text("Path as given, with forward slashes."),
  digest: form("SHA-256 of the canonical JSON of its data.", SHA256),
});

/** What stands before the points of a result document. */
export const HEAD = {
  program: exactly("The program that screened.", { name: text("Its name."), version: text("Its version.") }),
  digest: form(
    "SHA-256 over program version, rulebook, surveys, site file, deviations, column file, word files and options.",
    SHA256,
  ),
  asOf: form("Day for which limits were looked up.", DAY),
  stage: oneOfWords("Whether the points are proposals or built.", ["proposed", "installed"]),
  set: text("Set of rules that was asked."),
  rulebook: RULEBOOK_SHOWN,
  site: exactly("The site as stated for the run.", {
    name: textOrNull("Its name, part of every point id."),
    file: textOrNull("Site file."),
    digest: formOrNull("SHA-256 of the site file's data.", SHA256),
  }),
  reading: exactly("What was settled about the reading of the surveys.", {
    columnFile: {
      description: "Column file; null where none was handed in.",
      oneOf: [FILE_READ, { type: "null" }],
    },
    wordFiles: listOf("Word files of the site, in the order given.", FILE_READ),
    options: listOf("Options of the reading as written.", { type: "string" }),
  }),
  deviations: {
    description: "Accepted deviations and how they stand; null where none were handed in.",
    oneOf: [DEVIATIONS, { type: "null" }],
  },
  surveys: listOf("Survey files in the order given.", defined("survey")),
  skipped: listOf(
    "Files left out on the user's word.",
    exactly("A file left out.", { file: text("Path as given."), text: text("Why it could not be read.") }),
  ),
  models: listOf("Sensor models that the points name.", defined("model")),
  tables: listOf("Tables in force that the rules look up.", defined("table")),
  rules: listOf("Rules that were asked, said once.", defined("rule")),
  groups: listOf("Rows that share a key (a supply, a machine), where there is something to list.", defined("group")),
  cautions: listOf("Cautions that go with everything that leads to work.", { type: "string" }),
} as const satisfies Record<string, SchemaPart>;

/**
 * JSON Schema of the result document, and under `$defs` of the lines of its NDJSON form (`ndjsonHead`, `point`,
 * `ndjsonClosing`). Every key is always there, null where it has no value. The file `schemas/result.schema.json`
 * is written from it.
 */
export const RESULT_SCHEMA: SchemaPart = {
  $schema: "https://json-schema.org/draft/2020-12/schema",
  $id: "result.schema.json",
  title: "Result of a screening",
  ...exactly("Verdicts on proposed measurement points, with the reason, the limit and the source of each finding.", {
    ...HEAD,
    points: listOf("Points in the order of files, sheets and rows.", defined("point")),
    summary: defined("summary"),
  }),
  $defs: {
    ...FINDING_PARTS,
    ...HEAD_PARTS,
    ...GROUP_PARTS,
    ndjsonHead: exactly("First line of the NDJSON form: all that stands before the points.", HEAD),
    ndjsonClosing: exactly("Last line of the NDJSON form; a stream without it broke off.", {
      summary: defined("summary"),
    }),
    ndjsonLine: {
      description: "Any line of the NDJSON form.",
      oneOf: [defined("ndjsonHead"), defined("point"), defined("ndjsonClosing")],
    },
  },
};

/** The schema as its file holds it. */
export function resultSchemaText(): string {
  return `${JSON.stringify(RESULT_SCHEMA, null, 2)}\n`;
}
