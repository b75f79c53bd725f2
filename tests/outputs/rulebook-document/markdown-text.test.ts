import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  htmlText,
  markdownCode,
  markdownId,
  markdownText,
} from "../../../src/outputs/rulebook-document/markdown-text.js";

describe("a text in Markdown", () => {
  it.each([
    ["a | b", "a \\| b"],
    ["<script>alert(1)</script>", "\\<script\\>alert(1)\\</script\\>"],
    ["[a](javascript:x) ![b](c)", "\\[a\\](javascript:x) \\!\\[b\\](c)"],
    ["*a* _b_ ~c~ `d` $e$", "\\*a\\* \\_b\\_ \\~c\\~ \\`d\\` \\$e\\$"],
    ["# no heading", "\\# no heading"],
    ["- no entry", "\\- no entry"],
    ["12. no entry", "12\\. no entry"],
    ["2.1 stays", "2.1 stays"],
    ["= no underline", "\\= no underline"],
    ["one\n\n- two", "one - two"],
    ["https://example.com and www.example.com", "https:\\//example.com and www\\.example.com"],
    ["&lt;", "\\&lt;"],
    ["a\u0000\u202eb", "a␀\ufffdb"],
    ["20 °C × 1.1 (±)", "20 °C × 1.1 (±)"],
  ])("%j is written as %j", (text, written) => {
    expect(markdownText(text)).toBe(written);
  });

  it("is the text again once the backslashes before signs are taken away", () => {
    fc.assert(
      fc.property(fc.stringMatching(/^[ -~äß“”]{0,40}$/), (text) => {
        const written = markdownText(text);
        expect(written.replace(/\\([!-/:-@[-`{-~])/g, "$1")).toBe(text.replace(/\s+/g, " "));
        expect(written).not.toMatch(/(?<!\\)(?:\\\\)*[|<>`[\]*_~]/);
      }),
    );
  });

  it("keeps code whole, whatever backticks it has", () => {
    expect(markdownCode("seat-diameter")).toBe("`seat-diameter`");
    expect(markdownCode("a`b``c")).toBe("```a`b``c```");
    expect(markdownCode("`|`")).toBe("`` `\\|` ``");
  });

  it("lets no id out of its attribute, no text out of its element", () => {
    expect(markdownId('a"><b>(c)')).toBe("a%22%3E%3Cb%3E%28c%29");
    expect(htmlText("<b>\n&")).toBe("&lt;b> &amp;");
  });
});
