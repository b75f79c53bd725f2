import { describe, expect, it } from "vitest";
import { indexRules, leadingFinding, missingOf, reasonOf, remedyOf, sourceOf } from "../../../src/outputs/index.js";
import { COATED_SEAT, finding, SPEED_OPEN, SUPPLY_OUTSIDE, THREAD_TOO_SHORT, TORQUE_OPEN } from "../fake-findings.js";
import { HEAD } from "../fake-head.js";

const rules = indexRules(HEAD);

describe("leadingFinding", () => {
  it.each([
    ["fail before open that counts as a fail", [TORQUE_OPEN, SUPPLY_OUTSIDE], SUPPLY_OUTSIDE],
    ["open that counts as a fail before warn", [COATED_SEAT, TORQUE_OPEN], TORQUE_OPEN],
    ["warn before open", [SPEED_OPEN, COATED_SEAT], COATED_SEAT],
    ["the rulebook's order among equals", [SUPPLY_OUTSIDE, THREAD_TOO_SHORT], THREAD_TOO_SHORT],
    ["open before pass", [finding("hole-depth", "pass"), SPEED_OPEN], SPEED_OPEN],
  ])("puts %s", (_name, findings, leading) => {
    expect(leadingFinding(findings, rules)).toBe(leading);
  });

  it("counts a missing limit like an open question", () => {
    const none = finding("hole-depth", "no-limit-in-force");
    expect(leadingFinding([none], rules)).toBe(none);
  });

  it("puts a rule that the head does not list last", () => {
    expect(leadingFinding([finding("point-twice", "fail"), SUPPLY_OUTSIDE], rules)).toBe(SUPPLY_OUTSIDE);
  });

  it("is null where all is well", () => {
    expect(
      leadingFinding([finding("hole-depth", "pass"), finding("adhesive-cure", "not-applicable")], rules),
    ).toBeNull();
  });
});

describe("reasons", () => {
  it("says what is missing where there is no message", () => {
    expect(reasonOf(TORQUE_OPEN, rules)).toBe(
      "The torque does not overload the unit: not settled without planned tightening torque (cannot be read)",
    );
    expect(remedyOf(TORQUE_OPEN, rules)).toBe("find out: planned tightening torque (cannot be read)");
  });

  it("names each missing fact once", () => {
    expect(missingOf([SPEED_OPEN, SPEED_OPEN])).toBe(
      "lowest speed, nominal speed (too close to the limit for its accuracy; measure it to ± 0.15 r/min or better)",
    );
  });

  it("quotes the source of the limit that spoke", () => {
    expect(sourceOf(COATED_SEAT, rules)).toBe("ISO 5348, clause 5.1: the sensor sits on clean bare metal (standard)");
    expect(sourceOf(TORQUE_OPEN, rules)).toBe("torque of unit, as the trade does it (common practice)");
  });
});
