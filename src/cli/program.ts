import { Command, CommanderError } from "commander";
import { programIdentity } from "./identity.js";
import type { Terminal } from "./terminal.js";

type Identity = ReturnType<typeof programIdentity>;
type LoadCommand = (terminal: Terminal, program: Identity) => Promise<Command>;

/**
 * The commands in the order in which the help names them. Each brings its own part of the program, so that a run
 * waits only for what it needs.
 */
const COMMANDS: Readonly<Record<string, LoadCommand>> = {
  screen: async (terminal, program) => (await import("./screen-command.js")).screenCommand(terminal, program),
  why: async (terminal, program) => (await import("./why-command.js")).whyCommand(terminal, program),
  "what-changes": async (terminal, program) =>
    (await import("./what-changes-command.js")).whatChangesCommand(terminal, program),
  "move-limit": async (terminal, program) =>
    (await import("./move-limit-command.js")).moveLimitCommand(terminal, program),
  "check-built": async (terminal, program) =>
    (await import("./check-built-command.js")).checkBuiltCommand(terminal, program),
  export: async (terminal, program) => (await import("./export-command.js")).exportCommand(terminal, program),
  "work-packs": async (terminal, program) =>
    (await import("./work-packs-command.js")).workPacksCommand(terminal, program),
  "accept-export": async (terminal) => (await import("./accept-export-command.js")).acceptExportCommand(terminal),
  "check-export": async (terminal, program) =>
    (await import("./check-export-command.js")).checkExportCommand(terminal, program),
  columns: async (terminal) => (await import("./columns-command.js")).columnsCommand(terminal),
  "check-rules": async (terminal) => (await import("./check-rules-command.js")).checkRulesCommand(terminal),
  "new-rule": async (terminal) => (await import("./new-rule-command.js")).newRuleCommand(terminal),
  "write-schemas": async (terminal) => (await import("./write-schemas-command.js")).writeSchemasCommand(terminal),
  "sign-rulebook": async (terminal) => (await import("./sign-rulebook-command.js")).signRulebookCommand(terminal),
  "blank-survey": async (terminal, program) =>
    (await import("./blank-survey-command.js")).blankSurveyCommand(terminal, program),
  "write-rulebook": async (terminal, program) =>
    (await import("./write-rulebook-command.js")).writeRulebookCommand(terminal, program),
};

/**
 * Runs the command line.
 *
 * @param args - what stands behind the program's name
 */
export async function runCommandLine(args: readonly string[], terminal: Terminal): Promise<void> {
  const identity = programIdentity();
  const program = new Command("spotface")
    .description(
      "Screens surveys of proposed points for permanently mounted vibration sensors.\n" +
        "A verdict is a screening, not a permission to work on a machine.",
    )
    .version(identity.version)
    .exitOverride()
    .configureOutput({ writeOut: (text) => void terminal.out(text), writeErr: (text) => terminal.err(text) });
  for (const load of commandsFor(args)) {
    const command = await load(terminal, identity);
    program.addCommand(command.exitOverride().configureOutput(program.configureOutput()));
  }
  try {
    await program.parseAsync([...args], { from: "user" });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    terminal.setExitCode(error.exitCode === 0 ? 0 : 2);
  }
}

/** The command that is asked for; all of them where help is wanted, or what is asked for is none. */
function commandsFor([name = ""]: readonly string[]): readonly LoadCommand[] {
  const named = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (named) return [named];
  return name === "--version" || name === "-V" ? [] : Object.values(COMMANDS);
}
