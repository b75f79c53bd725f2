import { readFileSync, writeFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { projectPath } from "../../tools/shipped.js";
import { bundledScript, scriptModule } from "./bundle.js";

const FILE = projectPath("src/outputs/report/page-script.ts");
/** Set to 1 to bundle the script anew. */
const REWRITE = "WRITE_SCRIPTS";

describe("the script of the report's page", () => {
  it(`is what its sources make (${REWRITE}=1 bundles it anew)`, async () => {
    const module = scriptModule(await bundledScript());
    if (process.env[REWRITE] === "1") writeFileSync(FILE, module);
    expect(readFileSync(FILE, "utf8") === module, `out of date: run this test with ${REWRITE}=1`).toBe(true);
  });

  it("fetches nothing and makes no code from text", () => {
    const module = readFileSync(FILE, "utf8");
    for (const word of [
      "fetch(",
      "XMLHttpRequest",
      "WebSocket",
      "import(",
      "eval(",
      "new Function",
      "http://",
      "https://",
    ]) {
      // The names of XML languages, by which elements are made, are no addresses.
      const rest = module.replaceAll(/http:\/\/www\.w3\.org\/(?:2000\/svg|1999\/xhtml|1998\/Math\/MathML)/g, "");
      expect(rest.includes(word), word).toBe(false);
    }
  });
});
