import { Command, CommanderError } from "commander";
import { acceptExportCommand } from "./accept-export-command.js";
import { blankSurveyCommand } from "./blank-survey-command.js";
import { checkBuiltCommand } from "./check-built-command.js";
import { checkExportCommand } from "./check-export-command.js";
import { checkRulesCommand } from "./check-rules-command.js";
import { columnsCommand } from "./columns-command.js";
import { exportCommand } from "./export-command.js";
import { programIdentity } from "./identity.js";
import { moveLimitCommand } from "./move-limit-command.js";
import { newRuleCommand } from "./new-rule-command.js";
import { screenCommand } from "./screen-command.js";
import { signRulebookCommand } from "./sign-rulebook-command.js";
import type { Terminal } from "./terminal.js";
import { whatChangesCommand } from "./what-changes-command.js";
import { whyCommand } from "./why-command.js";
import { workPacksCommand } from "./work-packs-command.js";
import { writeRulebookCommand } from "./write-rulebook-command.js";

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
  for (const command of [
    screenCommand(terminal, identity),
    whyCommand(terminal, identity),
    whatChangesCommand(terminal, identity),
    moveLimitCommand(terminal, identity),
    checkBuiltCommand(terminal, identity),
    exportCommand(terminal, identity),
    workPacksCommand(terminal, identity),
    acceptExportCommand(terminal),
    checkExportCommand(terminal, identity),
    columnsCommand(terminal),
    checkRulesCommand(terminal),
    newRuleCommand(terminal),
    signRulebookCommand(terminal),
    blankSurveyCommand(terminal, identity),
    writeRulebookCommand(terminal, identity),
  ]) {
    program.addCommand(command.exitOverride().configureOutput(program.configureOutput()));
  }
  try {
    await program.parseAsync([...args], { from: "user" });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    terminal.setExitCode(error.exitCode === 0 ? 0 : 2);
  }
}
