import { describe, expect, it } from "vitest";
import { indexRules } from "../../../src/outputs/findings/rule-index.js";
import { CollectedFindings } from "../../../src/outputs/report/collected-findings.js";
import { Texts } from "../../../src/outputs/report/texts.js";
import { repeatInGroup } from "../../../src/screening/repeated.js";
import { finding, THREAD_TOO_SHORT } from "../fake-findings.js";

/** What a report says of findings, as text. */
function said(findings: Parameters<CollectedFindings["of"]>[0]): readonly string[] {
  const texts = new Texts();
  const collected = new CollectedFindings(indexRules({ rules: [], models: [] }), texts, () => 0);
  const data = collected.of(findings, null);
  return data
    .filter((entry) => typeof entry === "number")
    .map((place) =>
      (collected.all[place] ?? []).map((one) => (typeof one === "number" ? texts.all[one] : "")).join(" | "),
    );
}

describe("findings collected for a report", () => {
  const overloaded = finding("supply-load", "fail", {
    message: "SUPPLY has too much to carry",
    group: "supply: SUPPLY",
  });

  it("name the group and the words of each group, though the groups are alike", () => {
    const [first = "", second = ""] = said([
      repeatInGroup(overloaded, "supply: PSU 1", "PSU 1 has too much to carry"),
      repeatInGroup(overloaded, "supply: PSU 2", "PSU 2 has too much to carry"),
    ]);
    expect(first).toContain("PSU 1 has too much to carry");
    expect(first).toContain("supply: PSU 1");
    expect(second).toContain("PSU 2 has too much to carry");
    expect(second).toContain("supply: PSU 2");
    expect(second).not.toContain("PSU 1");
  });

  it("name each group where the words are the same", () => {
    const both = said(["PSU 1", "PSU 2"].map((name) => repeatInGroup(overloaded, `supply: ${name}`, "overloaded")));
    expect(both.map((text) => /PSU \d/.exec(text)?.[0])).toEqual(["PSU 1", "PSU 2"]);
  });

  it("stand once where they are the same", () => {
    const [first, second] = said([THREAD_TOO_SHORT, THREAD_TOO_SHORT]);
    expect(first).toBe(second);
  });
});
