import { Command } from "commander";
import { z } from "zod";
import { didYouMean, foldText, utcDay } from "../base/index.js";
import { cellsRead, pointInWords, whyText } from "../outputs/index.js";
import { type PointResult, type PointWhy, type ScreeningInput, screen, whyPoints } from "../screening/index.js";
import { deviationsOf, endCommand } from "./open-deviations.js";
import type { OpenedSurvey } from "./open-surveys.js";
import { addDeviationsOption, addRunOptions } from "./run-options.js";
import { readingOf, rulebookOf, setOf, siteOf, stop, surveysOf } from "./screen-inputs.js";
import { optionMistakes, SCREEN_OPTIONS, type ScreenOptions } from "./screen-options.js";
import type { Terminal } from "./terminal.js";

/** Points that are told of at most; more is no longer read by anybody. */
const MOST_POINTS = 20;

const OWN = z
  .object({
    point: z.string().trim().min(1, "say which point: its id, its name, or sheet and row"),
    rule: z.array(z.string()).default([]),
  })
  .partial({ point: true });

/** `spotface why`: the whole way to the verdict of a point, down to the cells. */
export function whyCommand(terminal: Terminal, program: ScreeningInput["program"]): Command {
  const command = new Command("why")
    .description("show the whole way to the verdict of a point: conditions, limits, facts, cells, sources")
    .argument("<file...>", "survey files")
    .requiredOption("--point <point>", "the point: its id, its name in the survey, or SHEET:ROW (ROW in a text table)")
    .option("--rule <id>", "only this rule; may be given again", (id: string, all: string[] = []) => [...all, id])
    .option("--json", "print it as lines of JSON, one per point");
  return addRunOptions(addDeviationsOption(command)).action(async (files: string[], raw: Record<string, unknown>) => {
    const { point: _, rule: __, ...shared } = raw;
    const own = OWN.safeParse({ point: raw.point, rule: raw.rule });
    const options = SCREEN_OPTIONS.safeParse(shared);
    if (!own.success || !options.success) {
      for (const { error } of [own, options]) if (error) terminal.err(optionMistakes(error));
      terminal.setExitCode(2);
      return;
    }
    try {
      await tell(files, options.data, { point: own.data.point ?? "", rules: own.data.rule }, terminal, program);
    } catch (error) {
      endCommand(error, terminal);
    }
  });
}

async function tell(
  files: readonly string[],
  options: ScreenOptions,
  asked: { readonly point: string; readonly rules: readonly string[] },
  terminal: Terminal,
  program: ScreeningInput["program"],
): Promise<void> {
  const rulebook = await rulebookOf(options, terminal);
  const set = setOf(options, rulebook, terminal);
  const known = rulebook.rules.map(({ id }) => id);
  for (const id of asked.rules) {
    if (!known.includes(id)) stop(terminal, `--rule: the rulebook has no rule "${id}"${didYouMean(id, known)}`);
  }
  const site = await siteOf(options, rulebook, terminal);
  const deviations = await deviationsOf(options, rulebook, terminal);
  const reading = await readingOf(options, rulebook, terminal);
  const surveys = await surveysOf(files, options, reading, site, terminal, true);
  const input: ScreeningInput = {
    program,
    rulebook,
    surveys: surveys.opened.map(({ survey }) => survey),
    skipped: surveys.unreadable,
    site,
    deviations,
    options: {
      set,
      stage: options.stage,
      asOf: options.asOf ?? utcDay(terminal.now()),
      siteName: options.site ?? null,
      reading: reading.settled,
      allFindings: true,
    },
  };
  const meant = pointsMeant(input, asked.point, terminal);
  const rules = asked.rules.length === 0 ? null : new Set(asked.rules);
  const context = { head: screen(input).head, rulebook, cells: cellsByFile(surveys.opened) };
  let isFirst = true;
  for (const why of whyPoints(input, { isMeant: (point) => meant.has(rowOf(point)), rules })) {
    await terminal.out(options.json ? whyLine(why) : `${isFirst ? "" : "\n\n"}${whyText(why, context)}`);
    isFirst = false;
  }
  terminal.setExitCode(0);
}

function whyLine(why: PointWhy): string {
  return `${JSON.stringify(why)}\n`;
}

function cellsByFile(opened: readonly OpenedSurvey[]): (file: string) => ReturnType<typeof cellsRead> | null {
  const looks = new Map(
    opened.flatMap(({ survey, workbook }) =>
      workbook === null ? [] : [[survey.file, cellsRead(survey, workbook)] as const],
    ),
  );
  return (file) => looks.get(file) ?? null;
}

function rowOf({ file, sheet, row }: Pick<PointResult, "file" | "sheet" | "row">): string {
  return JSON.stringify([file, sheet, row]);
}

/** The points that a person can have meant; none, or too many, ends the run with what to write instead. */
function pointsMeant(input: ScreeningInput, asked: string, terminal: Terminal): ReadonlySet<string> {
  const folded = foldText(asked);
  const names: string[] = [];
  const meant: PointResult[] = [];
  for (const point of screen({ ...input, options: { ...input.options, allFindings: false } }).points()) {
    const place = point.sheet === null ? String(point.row) : `${point.sheet}:${point.row}`;
    const ways = [point.id, point.point, pointInWords(point), place].flatMap((way) => (way === null ? [] : [way]));
    names.push(...ways);
    if (ways.some((way) => foldText(way) === folded)) meant.push(point);
  }
  if (meant.length === 0) {
    const near = didYouMean(asked, names) || "; give its id, its name in the survey, or SHEET:ROW";
    stop(terminal, `--point: no point "${asked}" in ${input.surveys.map(({ file }) => file).join(", ")}${near}`);
  }
  if (meant.length > MOST_POINTS) {
    stop(terminal, `--point: "${asked}" names ${meant.length} points; give an id, or SHEET:ROW`);
  }
  return new Set(meant.map(rowOf));
}
