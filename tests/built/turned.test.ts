import { describe, expect, it } from "vitest";
import { compareVerdicts } from "../../src/built/turned.js";
import { finding } from "../outputs/fake-findings.js";

const GATE = "behind-wall";
const gates = { before: new Set([GATE]), now: new Set([GATE]) };
const by = { gates, isAsked: () => true };

describe("a rule that counts an open question as a fail", () => {
  const open = { verdict: "fail", findings: [finding(GATE, "undecided")] } as const;
  const failing = { verdict: "fail", findings: [finding(GATE, "fail", { message: "oil behind the wall" })] } as const;

  it("recalls the order where it was open and now fails, though the verdict is the same", () => {
    const compared = compareVerdicts(open, failing, by);
    expect(compared).toMatchObject({ change: "same", recall: true, onlyUndecided: false });
    expect(compared.turned).toMatchObject([{ rule: GATE, worse: true, before: { outcome: "undecided" } }]);
  });

  it("recalls the order where it failed at no time before and is open now", () => {
    const compared = compareVerdicts({ verdict: "pass", findings: [] }, open, by);
    expect(compared).toMatchObject({ change: "falls", recall: true, onlyUndecided: true });
  });

  it("recalls nothing where it failed and is open now, or says the same", () => {
    expect(compareVerdicts(failing, open, by)).toMatchObject({ recall: false, turned: [{ worse: false }] });
    expect(compareVerdicts(failing, failing, by)).toMatchObject({ recall: false, turned: [] });
  });
});
