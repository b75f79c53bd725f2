import { type Command, Option } from "commander";
import { z } from "zod";
import { DECIMAL_SIGNS, type DecimalSign, LANGUAGES, type Language } from "../facts/index.js";
import { columnOption } from "../rulebook/index.js";
import { HIGHEST_LIMITS, LIMIT_NAMES, type ReadingLimits } from "../workbook/index.js";

const language = z.enum(LANGUAGES as [Language, ...Language[]]);
const decimal = z.enum(DECIMAL_SIGNS as [DecimalSign, ...DecimalSign[]]);
const positive = z.int("expected a whole number").positive("expected a number above 0");

function atMost(highest: number | undefined): typeof positive {
  return highest === undefined ? positive : positive.max(highest, `expected at most ${highest}`);
}

/** What is said of one column, checked; the text as written stays beside it for the result. */
const column = z.string().transform((text, context) => {
  const reading = columnOption(text);
  if (reading.ok) return { text, word: reading.word };
  context.addIssue({ code: "custom", message: reading.text });
  return z.NEVER;
});

const LIMITS = Object.entries(LIMIT_NAMES) as (readonly [keyof ReadingLimits, string])[];

/** One `name=value`, checked. */
const limit = z.string().transform((text, context) => {
  const [name = "", value = "", ...rest] = text.split("=");
  const [key] = LIMITS.find(([, known]) => known === name.trim()) ?? [];
  const number = /^\d{1,15}$/.test(value.trim()) ? Number(value) : 0;
  const highest = key === undefined ? undefined : HIGHEST_LIMITS[key];
  if (highest !== undefined && number > highest) {
    context.addIssue({ code: "custom", message: `"${text}": no more than ${highest} can be allowed` });
    return z.NEVER;
  }
  if (key !== undefined && number > 0 && rest.length === 0) return [key, number] as const;
  const names = LIMITS.map(([, known]) => known).join(", ");
  const message =
    key === undefined
      ? `"${text}" names no limit; write name=number with one of ${names}`
      : `"${text}" gives no whole number above 0; write ${name}=number, without grouping`;
  context.addIssue({ code: "custom", message });
  return z.NEVER;
});

/** Options of the command line that say how surveys are to be read. */
export const READING_OPTIONS = {
  columns: z.string().optional(),
  words: z.array(z.string()).default([]),
  language: language.optional(),
  decimal: decimal.optional(),
  column: z.array(column).default([]),
  limit: z.array(limit).default([]),
  encoding: z.string().optional(),
  separator: z.string().optional(),
};

const READING = z.object(READING_OPTIONS);

/** The same, checked. */
export type ReadingChosen = z.infer<typeof READING>;

/** What a call of the library may say of the reading; the names of the limits are those of `ReadingLimits`. */
export const LIBRARY_READING = {
  columns: z.string(),
  words: z.array(z.string()),
  language,
  decimal,
  column: z.array(column),
};

/** The limits that a call of the library may set. */
export const LIBRARY_LIMITS = z
  .object(
    Object.fromEntries(LIMITS.map(([key]) => [key, atMost(HIGHEST_LIMITS[key])])) as Record<
      keyof ReadingLimits,
      typeof positive
    >,
  )
  .partial()
  .strict();

/** Adds the options that say how surveys are to be read. */
export function addReadingOptions(command: Command): Command {
  const several = (value: string, before: readonly string[] = []): readonly string[] => [...before, value];
  return command
    .option("--columns <file>", "column file: which heading means what, in surveys that come again")
    .option(
      "--column <heading=fact>",
      'read a column for a fact, "HEADING=fact unit", or "HEADING=ignore"; repeatable',
      several,
    )
    .option("--words <file>", "headings and words of the site, added to those of the rulebook; repeatable", several)
    .addOption(
      new Option("--language <language>", "language of the surveys (default: found by evidence)").choices(LANGUAGES),
    )
    .addOption(
      new Option("--decimal <sign>", "decimal sign of the surveys (default: found by evidence)").choices(DECIMAL_SIGNS),
    )
    .option("--encoding <name>", "encoding of text files without a mark (default: UTF-8)")
    .option("--separator <sign>", "separator of text files (default: found by evidence)")
    .option(
      "--limit <name=number>",
      `what a file may ask of the machine: ${Object.values(LIMIT_NAMES).join(", ")}; repeatable`,
      several,
    );
}
