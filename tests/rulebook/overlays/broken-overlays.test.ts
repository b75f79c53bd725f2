import { describe, expect, it } from "vitest";
import { type FileFinding, loadRulebook, type OverlayFiles } from "../../../src/rulebook/index.js";
import { breakText } from "../broken.js";
import { BROKEN_OVERLAYS } from "./broken-overlays.js";
import { bookBelow, overlayFiles, SMALL_OVERLAY } from "./small-overlay.js";

function findingsOver(...over: readonly OverlayFiles[]): readonly FileFinding[] {
  const loading = loadRulebook(bookBelow(), { over });
  return loading.ok ? [] : loading.findings;
}

describe("an overlay with one mistake", () => {
  it("loads while nothing is broken", () => {
    expect(loadRulebook(bookBelow(), { over: [overlayFiles()] })).toMatchObject({ ok: true });
  });

  it.each(BROKEN_OVERLAYS.map((broken) => [broken.name, broken] as const))("%s", (_name, broken) => {
    const { text, line, column } = breakText(SMALL_OVERLAY[broken.file] ?? "", broken);
    const findings = findingsOver(overlayFiles({ [broken.file]: text }));
    const { file, code, says = "" } = broken;
    expect(findings).toEqual([{ file: `site/${file}`, line, column, code, text: expect.stringContaining(says) }]);
    expect(findings[0]?.text).toMatch(/^(?![A-Z]).*[^.]$/);
    expect(findings[0]?.text).not.toContain("undefined");
  });
});
