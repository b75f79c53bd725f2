import { renderToString } from "preact-render-to-string";
import { describe, expect, it } from "vitest";
import { openRulebook } from "../../../src/cli/open-rulebook.js";
import { LaidOver } from "../../../src/outputs/html/laid-over.js";
import { screenRows, surveyOf } from "../../tools/make-record.js";
import { projectPath } from "../../tools/shipped.js";

async function shown(over: readonly string[]): Promise<string> {
  const loading = await openRulebook(null, over);
  if (!loading.ok) throw new Error(JSON.stringify(loading.findings));
  const { screening } = screenRows(loading.rulebook, [surveyOf([{}])], { set: "full" });
  return renderToString(<LaidOver rulebook={screening.head.rulebook} />);
}

describe("what a site has laid over the rulebook", () => {
  it("stands on pages with each change, its reason, who answers for it, and what is switched off", async () => {
    const text = await shown([projectPath("samples/site-book")]);
    expect(text).toContain("Laid over the rulebook");
    expect(text).toMatch(/rule adhesive-cure: .*A\. Quill/);
    expect(text).toContain("switched off");
  });

  it("is not spoken of where there is nothing", async () => {
    expect(await shown([])).toBe("");
  });
});
