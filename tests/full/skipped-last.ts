import type { Reporter, TestCase, TestModule } from "vitest/node";

/**
 * Says, as the last line of a run, what could not be run on this machine and why: what is skipped in silence counts
 * as done. Tests of one file that share a reason are counted together.
 */
export class SkippedLast implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const said = modules.flatMap((module) =>
      [...byReason(module.children.allTests("skipped"))].map(([why, names]) => {
        const [only] = names;
        const what = names.length === 1 ? only : `${names.length} tests of ${module.relativeModuleId}`;
        return `${what} (${why})`;
      }),
    );
    process.stdout.write(`\nSKIPPED: ${said.length === 0 ? "nothing" : said.join("; ")}\n`);
  }
}

function byReason(tests: Iterable<TestCase>): ReadonlyMap<string, readonly string[]> {
  const reasons = new Map<string, string[]>();
  for (const test of tests) {
    const result = test.result();
    const why = (result.state === "skipped" ? result.note : undefined) ?? "no reason given";
    const names = reasons.get(why) ?? [];
    names.push(test.fullName);
    reasons.set(why, names);
  }
  return reasons;
}
