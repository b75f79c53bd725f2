import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { runCommand } from "../tools/run-command.js";
import { projectPath, projectText } from "../tools/shipped.js";

let folder = "";
const here = (name: string): string => join(folder, name);

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "spotface-book-"));
  cpSync(projectPath("rules"), here("rules"), { recursive: true });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("spotface write-rulebook", () => {
  it("writes the book that comes with the program, for today and for another day", async () => {
    const [html, markdown] = [here("book.html"), here("book.md")];
    const { out, err, code } = await runCommand("write-rulebook", "--html", html, "--markdown", markdown);
    expect([code, err, out]).toEqual([0, "", `Written: ${html}\nWritten: ${markdown}\n`]);
    expect(readFileSync(html, "utf8")).toMatch(/^<!doctype html>.*limits in force on.*2026-06-01/s);
    expect(readFileSync(markdown, "utf8")).toContain("| limits in force on | 2026-06-01 |");
    const before = here("before.md");
    await runCommand(
      "write-rulebook",
      "--markdown",
      before,
      "--as-of",
      "2025-12-31",
      "--set",
      "core",
      "--cases",
      "none",
    );
    const text = readFileSync(before, "utf8");
    expect(text).toContain("not yet in force");
    expect(text).toContain("9 rules, set core");
    expect(text).not.toContain("| case | given |");
  });

  it("writes the list of a folder into it, the same as of the shipped one, and the folder still loads", async () => {
    const list = here("rules/README.md");
    rmSync(list);
    expect((await runCommand("write-rulebook", here("rules"), "--index", list)).code).toBe(0);
    expect(readFileSync(list, "utf8")).toBe(projectText("rules/README.md"));
    expect((await runCommand("check-rules", here("rules"))).code).toBe(0);
  });

  it("replaces nothing unless told to, and never a file of the rulebook", async () => {
    const mine = here("mine.html");
    writeFileSync(mine, "mine");
    const refused = await runCommand("write-rulebook", "--html", mine, "--markdown", here("beside.md"));
    expect([refused.code, refused.out]).toEqual([2, ""]);
    expect(refused.err).toContain("exists already");
    expect([readFileSync(mine, "utf8"), existsSync(here("beside.md"))]).toEqual(["mine", false]);
    expect((await runCommand("write-rulebook", "--html", mine, "--overwrite")).code).toBe(0);
    for (const name of ["rules/CHANGES.md", "rules/rulebook.yaml"]) {
      const before = readFileSync(here(name), "utf8");
      const { code } = await runCommand("write-rulebook", here("rules"), "--markdown", here(name), "--overwrite");
      expect([code, readFileSync(here(name), "utf8")]).toEqual([2, before]);
    }
  });

  it.each([
    ["nothing to write", [], /say where: --html FILE/],
    ["a set that is not there", ["--html", "never.html", "--set", "fool"], /has no set "fool"; it has core, full/],
    [
      "a day that does not exist",
      ["--html", "never.html", "--as-of", "2026-02-30"],
      /--as-of: expected a day that exists/,
    ],
    ["a list without the folder's name", ["--index", "never.html"], /name the rulebook folder/],
    [
      "a list of two folders",
      ["--index", "never.html", "--over", projectPath("samples/site-book")],
      /leave --over out/,
    ],
    ["a list outside the folder", [projectPath("rules"), "--index", "never.html"], /write it to .*rules\/README\.md/],
    ["a rulebook that is not there", ["/nowhere", "--html", "never.html"], /mistake/],
  ] as const)("cannot run with %s", async (_name, words, sentence) => {
    const before = readdirSync(folder);
    const args = words.map((word) => (word === "never.html" ? here(word) : word));
    const { out, err, code } = await runCommand("write-rulebook", ...args);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toMatch(sentence);
    expect(readdirSync(folder)).toEqual(before);
  });

  it("says what a site has laid over the book, by whom and why", async () => {
    const [site, file] = [projectPath("samples/site-book"), here("site.md")];
    const { code } = await runCommand("write-rulebook", "--over", site, "--markdown", file, "--as-of", "2026-11-26");
    const text = readFileSync(file, "utf8");
    expect(code).toBe(0);
    expect(text).toContain("# spotface rulebook, version 0.4.0, with Vellamoor site book 1.0.0\n");
    const scope = text.slice(text.indexOf("What the site has laid over the rulebook\n"), text.indexOf("## 2 How"));
    expect(scope).toContain("- rule drip-loop: switched off, every connector of the works points down");
    expect(scope).toContain("B. Sedge, head of electrical maintenance, 2026-09-21");
    const part = (id: string): string => text.split(`<a id="rule-${id}"></a>`)[1]?.split("<a id=")[0] ?? "";
    expect(part("adhesive-cure")).toContain("below 30 min");
    expect(part("adhesive-cure")).toMatch(
      /\*\*Changed by the site:\*\*\n\n- limit.* by Vellamoor site book: the halls are cold/,
    );
    expect(part("adhesive-cure")).toContain("**Vellamoor site book 1.0.0**: [`adhesive-cure`]");
    expect(part("cable-in-store")).toContain("a rule of Vellamoor site book");
    expect(part("drip-loop")).toBe("");
    expect(text).toContain("added by Vellamoor site book");
  });

  it("writes no standard whose cases come out otherwise", async () => {
    const rule = here("rules/torque/tightening-torque.yaml");
    const text = readFileSync(rule, "utf8");
    writeFileSync(rule, text.replace("given: { target_torque: 10.1 N·m", "given: { target_torque: 9.9 N·m"));
    const { err, code } = await runCommand("write-rulebook", here("rules"), "--html", here("never.html"));
    expect(code).toBe(2);
    expect(err).toMatch(/tightening-torque\.yaml:\d+: case "a tenth above": expected fail, found pass/);
    expect(err).toContain("1 case of the rulebook came out otherwise; nothing was written");
    expect(existsSync(here("never.html"))).toBe(false);
  });
});
