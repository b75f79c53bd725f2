#!/usr/bin/env node
import { runCommandLine } from "./program.js";
import { processTerminal } from "./terminal.js";

// A reader that has seen enough (| head) closes the pipe; that is no mistake of the run.
process.stdout.on("error", (error: NodeJS.ErrnoException) => {
  if (error.code === "EPIPE") process.exit(0);
  process.stderr.write(
    `spotface: the result could not be written to standard output (${error.code ?? error.message})\n`,
  );
  process.exit(2);
});

try {
  await runCommandLine(process.argv.slice(2), processTerminal);
} catch (error) {
  process.stderr.write(
    `spotface: a mistake in the program itself: ${error instanceof Error ? error.stack : String(error)}\n`,
  );
  process.exitCode = 2;
}
