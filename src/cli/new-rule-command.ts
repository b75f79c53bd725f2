import { statSync } from "node:fs";
import { mkdir } from "node:fs/promises";
import { dirname } from "node:path";
import { Command } from "commander";
import { z } from "zod";
import { isPlainDay, STAGES, type Stage, utcDay } from "../base/index.js";
import { checkWritable, writeTogether } from "../disk/index.js";
import { countOf } from "../outputs/index.js";
import { type AskedRule, linesToFill, type NewRule, newRule } from "../proving/index.js";
import { isRulePath, loadRulebook, type Rulebook } from "../rulebook/index.js";
import { schemaFor, schemaNamed } from "./editor-schemas.js";
import { findingLine, type RulebookFiles, readBookFiles, rulebookPaths } from "./open-rulebook.js";
import { loadRemembered } from "./remembered-books.js";
import { optionMistakes } from "./screen-options.js";
import type { Terminal } from "./terminal.js";

const NAME = /^[a-z0-9]+(-[a-z0-9]+)*$/;
const name = z.string().regex(NAME, "expected lower-case letters, digits and single hyphens").max(64);

const OPTIONS = z
  .object({
    topic: name,
    judges: z.string(),
    fails: z.array(z.string()).default([]),
    warns: z.array(z.string()).default([]),
    applies: z.array(z.string()).default([]),
    title: z
      .string()
      .regex(/^[^\n\r]*\S[^\n\r]*$/, "expected a text of one line")
      .optional(),
    group: name.optional(),
    set: z.array(z.string()).default([]),
    stage: z.array(z.enum(STAGES as [Stage, ...Stage[]])).default([]),
    rules: z.string().optional(),
    from: z.string().refine(isPlainDay, { message: "expected a day that exists, written YYYY-MM-DD" }).optional(),
  })
  .strict();

type NewRuleOptions = z.infer<typeof OPTIONS>;

/** The schema as the rules of a rulebook name it that stands beside the folder of schemas. */
const SCHEMA = "../../schemas/rule.schema.json";

/** `spotface new-rule`: a rule file with its cases, to be filled in by the standards owner. */
export function newRuleCommand(terminal: Terminal): Command {
  const several = (value: string, before: readonly string[] = []): readonly string[] => [...before, value];
  return new Command("new-rule")
    .description("write a new rule with its cases: at the limit and past it, what is missing, the edges of its date")
    .argument("<id>", "id of the rule, also the name of its file")
    .requiredOption("--topic <topic>", "folder of the rulebook in which it stands, such as hole")
    .requiredOption("--judges <fact>", "fact of which the limits speak, by its id in the catalogue")
    .option("--fails <band>", 'what fails, such as "below 9 mm" or "one of painted, rusty"; repeatable', several)
    .option("--warns <band>", "what warns, in the same way; repeatable", several)
    .option(
      "--applies <condition>",
      'when the rule applies, such as "mounting_method equal tapped-hole"; all of several',
      several,
    )
    .option("--title <text>", "what holds when the rule passes (default: made from the limit)")
    .option("--group <id>", "group of rows that it judges as a whole")
    .option("--set <name>", "set of rules it is in; repeatable (default: every set but core)", several)
    .option("--stage <stage>", "stage at which it is asked; repeatable (default: both)", several)
    .option("--from <day>", "first day in force, YYYY-MM-DD (default: today in UTC)")
    .option("--rules <folder>", "rulebook folder into which it is written")
    .action(async (id: string, raw: unknown) => {
      const options = OPTIONS.safeParse(raw);
      const named = name.safeParse(id);
      if (options.success && named.success) {
        terminal.setExitCode((await writeRule(id, options.data, terminal)) ? 0 : 2);
        return;
      }
      if (options.error) terminal.err(optionMistakes(options.error));
      if (named.error) terminal.err(`spotface: the id "${id}": ${named.error.issues[0]?.message ?? ""}\n`);
      terminal.setExitCode(2);
    });
}

async function writeRule(id: string, options: NewRuleOptions, terminal: Terminal): Promise<boolean> {
  const refuse = (text: string): false => {
    terminal.err(`spotface: ${text}\n`);
    return false;
  };
  const { topic, rules: folder } = options;
  if (folder === undefined) {
    return refuse(
      "--rules: say into which rulebook; the one that comes with the program is not written to unless it is named: copy it, and name the copy",
    );
  }
  if (statSync(folder, { throwIfNoEntry: false })?.isDirectory() !== true) {
    return refuse(`--rules: ${folder}: there is no such folder; name the folder of a rulebook`);
  }
  if (!isRulePath(`${topic}/${id}.yaml`)) {
    return refuse(`--topic: the folder "${topic}" of a rulebook holds no rules; choose the name of a topic`);
  }
  const read = await readBookFiles(folder, []);
  const loading = read.ok ? loadRemembered(read) : read;
  if (!read.ok || !loading.ok) {
    for (const finding of loading.ok ? [] : loading.findings) terminal.err(findingLine(finding));
    return refuse("the rulebook has mistakes; correct them first, so that the new rule can be proven");
  }
  const known = loading.rulebook.rules.find((rule) => rule.id === id);
  if (known) return refuse(`the id "${id}" stands in ${known.at.file} already; choose another one`);
  const target = `${read.root}/${topic}/${id}.yaml`;
  const { schema, there } = schemaFor(dirname(target), schemaOfRules(read));
  const made = newRule(askedRule(id, options, loading.rulebook, schema, terminal), (text) =>
    loadRulebook([...read.files, { path: target, text }], { root: read.root }),
  );
  if (!made.ok) {
    for (const { about, text } of made.mistakes) refuse(`${about === "rule" ? "" : `--${about}: `}${text}`);
    return false;
  }
  await mkdir(`${folder}/${topic}`, { recursive: true });
  const rules = { inputs: await rulebookPaths(folder, []), overwrite: false };
  for (const { path, text } of await checkWritable([target], rules.inputs, false)) return refuse(`${path}: ${text}`);
  const done = await writeTogether([{ path: target, data: made.text }], rules);
  if (!done.ok) return refuse(`${done.error.path}: ${done.error.text}`);
  await terminal.out(`Written: rule with ${countOf(made.cases, "case")}: ${target}\n`);
  terminal.err(whatNext(made, target, folder, there ? null : schema));
  return true;
}

function askedRule(
  id: string,
  options: NewRuleOptions,
  rulebook: Rulebook,
  schema: string,
  terminal: Terminal,
): AskedRule {
  const { judges, fails, warns, applies, title = null, group = null, set, stage, from } = options;
  const others = rulebook.sets.filter((one) => one !== "core");
  return {
    id,
    title,
    group,
    // A rule of the core speaks on every row, whatever the survey asks; nobody gets that unasked.
    sets: set.length > 0 ? set : others.length > 0 ? others : rulebook.sets,
    stages: stage.length > 0 ? STAGES.filter((one) => stage.includes(one)) : null,
    judges,
    fails,
    warns,
    applies,
    from: from ?? utcDay(terminal.now()),
    schema,
  };
}

/** How the rules of the folder name their schema, so that all of them find it or none does. */
function schemaOfRules({ files }: RulebookFiles): string {
  const named = files.map(({ text }) => schemaNamed(text));
  return named.find((schema) => schema !== null && /(?:^|\/)rule\.schema\.json$/.test(schema)) ?? SCHEMA;
}

/** @param lost - the schema that the rule names where an editor will not find it */
function whatNext(made: Extract<NewRule, { ok: true }>, target: string, folder: string, lost: string | null): string {
  const lines = [
    `to be filled in: line ${linesToFill(made.text).join(", line ")} of ${target}`,
    "the citation says from-memory until a source was read; a clause needs the day on which it was",
    ...(made.changeable.length > 0 ? [`remedy.change may name ${made.changeable.join(", ")}`] : []),
    ...made.open.map((what) => `a case to be written by you: ${what}`),
    ...(lost === null
      ? []
      : [
          `editors find no schema at ${lost}, seen from the rule; put it there for the whole rulebook: npx spotface write-schemas ${folder}`,
        ]),
    `then: raise the version in ${folder}/rulebook.yaml and say it in ${folder}/CHANGES.md`,
    `prove it: npx spotface check-rules ${folder} --complete`,
    `what it would change: npx spotface what-changes SURVEY.xlsx --after ${folder}`,
  ];
  return lines.map((line) => `spotface: ${line}\n`).join("");
}
