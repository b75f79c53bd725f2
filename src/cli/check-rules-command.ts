import { Command } from "commander";
import { countOf } from "../outputs/index.js";
import { runCase } from "../rulebook/index.js";
import { findingLine, openRulebook } from "./open-rulebook.js";
import type { Terminal } from "./terminal.js";

/** `spotface check-rules`: loads a rulebook as a screening would, and runs every case written beside a rule. */
export function checkRulesCommand(terminal: Terminal): Command {
  return new Command("check-rules")
    .description("check a rulebook: form, facts, units, dates, citations, and every case written beside a rule")
    .argument("[folder]", "rulebook folder (default: the one that comes with the program)")
    .action(async (folder: string | undefined) => {
      const loading = await openRulebook(folder ?? null);
      if (!loading.ok) {
        for (const finding of loading.findings) terminal.err(findingLine(finding));
        terminal.err(`spotface: ${countOf(loading.findings.length, "mistake")}; nothing was run\n`);
        terminal.setExitCode(2);
        return;
      }
      const { rulebook } = loading;
      let runs = 0;
      let wrong = 0;
      for (const rule of rulebook.rules) {
        for (const ruleCase of rule.cases) {
          for (const run of runCase(rule, ruleCase, rulebook)) {
            runs += 1;
            if (run.asExpected) continue;
            wrong += 1;
            const { file, line, column } = ruleCase.at;
            terminal.err(
              `${file}:${line}:${column}: case "${ruleCase.name}" (${run.stage}): ${run.difference} [case]\n`,
            );
          }
        }
      }
      await terminal.out(
        `${rulebook.name} ${rulebook.version}: ${countOf(rulebook.rules.length, "rule")}, ` +
          `${countOf(rulebook.models.size, "sensor model")}, ${countOf(runs, "case run")}, ${wrong} not as expected\n` +
          `digest ${rulebook.digest}\n`,
      );
      terminal.setExitCode(wrong > 0 ? 1 : 0);
    });
}
