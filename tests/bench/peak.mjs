/** Loaded ahead of a measured program: says at the end of the process what memory it took at its peak and what work. */
import { readFileSync, writeSync } from "node:fs";

process.on("exit", () => {
  const { user, system } = process.cpuUsage();
  writeSync(2, `\npeak-kib:${peakKib()} processor-us:${user + system}\n`);
});

/** The system's own count starts with the memory of whoever started the process; Linux also tells that of the program. */
function peakKib() {
  try {
    return Number(/^VmHWM:\s*(\d+) kB$/m.exec(readFileSync("/proc/self/status", "utf8"))?.[1]);
  } catch {
    return process.resourceUsage().maxRSS;
  }
}
