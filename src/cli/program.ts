import { readFileSync } from "node:fs";
import { Command, CommanderError } from "commander";
import { z } from "zod";
import { checkRulesCommand } from "./check-rules-command.js";
import { screenCommand } from "./screen-command.js";
import type { Terminal } from "./terminal.js";

const PACKAGE = z.object({ name: z.string(), version: z.string() });

/** Name and version of the program, as its package states them. */
export function programIdentity(): { readonly name: string; readonly version: string } {
  const text = readFileSync(new URL("../../package.json", import.meta.url), "utf8");
  const { name, version } = PACKAGE.parse(JSON.parse(text));
  return { name, version };
}

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
  for (const command of [screenCommand(terminal, identity), checkRulesCommand(terminal)]) {
    program.addCommand(command.exitOverride().configureOutput(program.configureOutput()));
  }
  try {
    await program.parseAsync([...args], { from: "user" });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    terminal.setExitCode(error.exitCode === 0 ? 0 : 2);
  }
}
