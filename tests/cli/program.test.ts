import { describe, expect, it } from "vitest";
import { runCommand } from "../tools/run-command.js";

/** The commands that the help of the program names. */
async function commands(): Promise<readonly string[]> {
  const { out } = await runCommand("--help");
  return [...(out.split("Commands:")[1] ?? "").matchAll(/^ {2}([a-z][a-z-]*) [[<]/gm)].map((match) => match[1] ?? "");
}

describe("the program", () => {
  it("names the commands in its help, and each can be asked for its own", async () => {
    const names = await commands();
    expect(names).toContain("screen");
    expect(names.length).toBeGreaterThan(14);
    for (const name of names.filter((one) => one !== "help")) {
      const { out, code } = await runCommand(name, "--help");
      expect(out, name).toMatch(new RegExp(`^Usage: spotface ${name} `));
      expect(code, name).toBe(0);
    }
  });

  it("tells its version", async () => {
    expect((await runCommand("--version")).out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });

  it.each([
    ["a command that there is not", "scren", "unknown command 'scren'"],
    ["a name that every object has", "constructor", "unknown command 'constructor'"],
    ["an option that there is not", "--fast", "unknown option '--fast'"],
  ])("refuses %s", async (_name, arg, words) => {
    const { err, code } = await runCommand(arg);
    expect(err).toContain(words);
    expect(code).toBe(2);
  });
});
