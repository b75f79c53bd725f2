import { existsSync, writeFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { rulesIndex } from "../../../src/outputs/index.js";
import { projectPath, projectText, shippedRulebook } from "../../tools/shipped.js";

// The list is for people who look at the folder.
// REWRITE_RULES_README=1 npx vitest run tests/outputs/rulebook-document writes it anew.
const FILE = "rules/README.md";
const rewrite = process.env.REWRITE_RULES_README === "1";

describe("rules/README.md", () => {
  it("says what the rule files say", async () => {
    const list = rulesIndex(await shippedRulebook());
    if (rewrite) writeFileSync(projectPath(FILE), list);
    expect(projectText(FILE) === list, `${FILE} is stale; write it anew, see above`).toBe(true);
  });

  it("leads to every rule, model, table and group, each time to a file that there is", async () => {
    const { rules, models, tables, groups } = await shippedRulebook();
    const paths = [...projectText(FILE).matchAll(/\]\(([^)]+\.yaml)\)/g)].map(([, path]) => path ?? "");
    expect(paths).toHaveLength(rules.length + models.size + tables.size + groups.size);
    expect(paths.filter((path) => !existsSync(projectPath(`rules/${path}`)))).toEqual([]);
  });
});
