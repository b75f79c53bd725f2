import { createHash } from "node:crypto";
import { describe, expect, it } from "vitest";
import { Mark } from "../../../src/outputs/html/mark.js";
import { htmlPage } from "../../../src/outputs/html/page.js";
import { shownText } from "../../../src/outputs/html/shown-text.js";

const parts = { title: 'a <b> & "c"', style: "p{margin:0}", mainId: "main" };

const hash = (text: string): string => `sha256-${createHash("sha256").update(text).digest("base64")}`;

describe("a page", () => {
  it("escapes every text, and allows its own style and script by their hashes alone", () => {
    const page = htmlPage({
      ...parts,
      script: "const a = 1 < 2;",
      body: <p title={'"><script>'}>{"</p><script>alert(1)</script>"}</p>,
    });
    expect(page.match(/<script>/g)).toHaveLength(1);
    expect(page).toContain("<title>a &lt;b> &amp; &quot;c&quot;</title>");
    const style = /<style>(.*?)<\/style>/s.exec(page)?.[1] ?? "";
    expect(page).toContain(`style-src '${hash(style)}'`);
    expect(page).toContain(`script-src '${hash("const a = 1 < 2;")}'`);
  });

  it("without a script allows none", () => {
    const page = htmlPage({ ...parts, script: null, body: <Mark outcome="fail" /> });
    expect(page).not.toContain("script-src");
    expect(page).toContain("default-src 'none'");
    expect(page).toContain("■ fail");
  });

  it("refuses a script that would end early", () => {
    expect(() => htmlPage({ ...parts, script: "'</SCRIPT>'", body: null })).toThrow(RangeError);
  });
});

describe("a text as a page shows it", () => {
  it("makes control characters visible and keeps what is meant", () => {
    expect(shownText("a\u0000b\u001b\u007f\u202e\ud800\tc\nö 𝛼")).toBe("a␀b␛␡\ufffd\ufffd\tc\nö 𝛼");
  });
});
