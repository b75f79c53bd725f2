import { describe, expect, it } from "vitest";
import { screenFiles } from "../../src/index.js";
import { projectPath } from "../tools/shipped.js";

const survey = projectPath("tests/data/surveys/tallgrass.csv");

describe("screenFiles", () => {
  it("screens files as the command line does", async () => {
    const run = await screenFiles([survey], { asOf: "2026-11-25", siteName: "Nordkai" });
    if (!run.ok) throw new Error(JSON.stringify(run));
    expect([...run.screening.points()]).toHaveLength(36);
    const summary = run.screening.summary();
    expect([...run.screening.points()]).toHaveLength(36);
    expect(run.screening.summary()).toEqual(summary);
    expect(() => {
      run.screening.points().next();
      run.screening.summary();
    }).toThrow(/not all judged/);
  });

  it.each([
    ["a stage that does not exist", { stage: "built" }, /--stage/],
    ["a day that does not exist", { asOf: "2026-02-30" }, /--as-of: .*YYYY-MM-DD/],
    ["a site without a name", { siteName: " " }, /--site-name/],
    ["an option that does not exist", { asof: "2026-11-25" }, /asof/],
    ["a set that does not exist", { set: "gold" }, /no set "gold"/],
  ])("refuses %s", async (_name, options, sentence) => {
    // What a program without types could hand in.
    await expect(screenFiles([survey], options as object)).rejects.toThrow(sentence);
  });

  it("refuses a file given twice, by whatever path, and tells of one that cannot be read", async () => {
    await expect(screenFiles([survey, survey.replace("/tallgrass", "/../surveys/tallgrass")])).rejects.toThrow(
      /given twice/,
    );
    const run = await screenFiles([projectPath("tests/data/surveys/nowhere.csv")]);
    expect(run).toMatchObject({ ok: false, unreadable: [{ text: expect.stringContaining("no such file") }] });
  });
});
