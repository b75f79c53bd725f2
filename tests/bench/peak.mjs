/** Loaded ahead of the program: says at the end of the process how much memory it took at its peak. */
import { writeSync } from "node:fs";

process.on("exit", () => {
  writeSync(2, `\npeak-kib:${process.resourceUsage().maxRSS}\n`);
});
