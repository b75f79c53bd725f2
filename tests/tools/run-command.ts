import { Ajv2020 } from "ajv/dist/2020.js";
import { runCommandLine } from "../../src/cli/program.js";
import { RESULT_SCHEMA } from "../../src/outputs/index.js";
import { secondsOfWork } from "./work.js";

/** What a run of the command line left behind. */
export interface CommandRun {
  readonly code: 0 | 1 | 2 | null;
  readonly out: string;
  readonly err: string;
  /** Work of the processor, which a busy machine changes less than the clock; what never ends meets the time limit of its test. */
  readonly seconds: number;
}

/** The parts of a result document that tests of whole files look at. */
export interface ResultDocument {
  readonly surveys: readonly {
    readonly sheets: readonly { readonly used: boolean; readonly why: string; readonly pointRows: number }[];
    readonly columns: readonly {
      readonly column: string;
      readonly heading: string;
      readonly facts: readonly string[];
    }[];
    readonly problems: readonly { readonly code: string; readonly cell: string | null; readonly text: string }[];
  }[];
  readonly points: readonly {
    readonly row: number;
    readonly machine: string | null;
    readonly findings: readonly {
      readonly rule: string;
      readonly missing: readonly { readonly fact: string; readonly reason: string }[];
      readonly facts: readonly { readonly fact: string; readonly value: unknown }[];
    }[];
  }[];
}

const validates = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true }).compile(RESULT_SCHEMA);

/** Runs the program in this process, on a terminal that only remembers. */
export async function runCommand(...args: readonly string[]): Promise<CommandRun> {
  const run = { code: null as CommandRun["code"], out: "", err: "" };
  const start = process.cpuUsage();
  await runCommandLine(args, {
    out: async (text) => {
      run.out += text;
    },
    err: (text) => {
      run.err += text;
    },
    setExitCode: (code) => {
      run.code = code;
    },
    interactive: false,
    onInterrupt: () => () => undefined,
    now: () => new Date("2026-06-01T00:00:00Z"),
  });
  return { ...run, seconds: secondsOfWork(start) };
}

/** The result document of a run, checked against its schema. */
export function resultOf(run: CommandRun): ResultDocument {
  const document: unknown = JSON.parse(run.out);
  if (!validates(document)) throw new Error(JSON.stringify(validates.errors?.slice(0, 3)));
  return document as ResultDocument;
}

/** Whether a text holds characters that steer a terminal; line breaks between messages are none. */
export function steersTerminal(text: string): boolean {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the characters looked for
  return /[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/.test(text);
}

/** One line that says what is wrong with the file: no stack trace, no raw value of great length. */
export function isOneSentence(text: string): boolean {
  const lines = text.split("\n").filter((line) => line !== "");
  return lines.length === 1 && text.length < 600 && !/\bat .*:\d+:\d+|Error:/.test(text);
}
