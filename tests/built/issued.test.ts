import { describe, expect, it } from "vitest";
import type { IssuedPoint, IssuedResult } from "../../src/built/index.js";
import { pointUuid } from "../../src/screening/index.js";
import { known } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";
import { checkRows, done, proposal, turnedIn } from "./made.js";

const idOf = (name: string): string => pointUuid("Vellamoor", name);

async function issuedWith(points: IssuedResult["points"], more: Partial<IssuedResult> = {}): Promise<IssuedResult> {
  const { digest, name, version } = await shippedRulebook();
  return {
    file: "issued.json",
    digest: "1".repeat(64),
    run: "2".repeat(64),
    asOf: "2026-03-01",
    set: "core",
    rulebook: { name, version, digest },
    surveys: [{ file: "proposed.xlsx", digest: "0".repeat(64) }],
    gates: new Set(),
    points,
    ...more,
  };
}

const PASSED: IssuedPoint = { point: "P", verdict: "pass", findings: [] };

describe("orders issued under a stored result", () => {
  it("compares what was built with the verdict of that result", async () => {
    const finding = { rule: "hole-depth", outcome: "fail", message: "the hole is 12 mm deep" } as const;
    const issued = await issuedWith(
      new Map<string, IssuedPoint>([
        [idOf("P1"), PASSED],
        [idOf("P2"), { point: "P2", verdict: "fail", findings: [finding] }],
      ]),
    );
    const { of, check } = await checkRows([proposal("P1"), proposal("P2")], [done("P1"), done("P2")], { issued });
    expect(of("P1")).toMatchObject({ verdictThen: "pass", change: "same", recall: false });
    expect(of("P2")).toMatchObject({ verdictThen: "fail", verdictNow: "pass", change: "rises" });
    expect(of("P2").turned[0]?.before).toEqual({ outcome: "fail", message: "the hole is 12 mm deep" });
    expect(check.head.issued).toMatchObject({ run: "2".repeat(64), rulebookChanged: false, gone: [] });
  });

  it("recalls an open order where the rules of today fail what they passed then", async () => {
    const issued = await issuedWith(new Map([[idOf("P1"), PASSED]]));
    const { of } = await checkRows([proposal("P1", { hole_depth: known(12) }), proposal("P2")], [done("P9")], {
      issued,
    });
    expect(of("P1")).toMatchObject({ status: "not-built", verdictThen: "pass", verdictNow: "fail", recall: true });
    expect(turnedIn(of("P1"))).toEqual(["hole-depth - > fail"]);
    expect(of("P2")).toMatchObject({ status: "not-built", verdictThen: null, verdictNow: null, recall: false });
  });

  it("does not take for approved what has no verdict there", async () => {
    const { of } = await checkRows([proposal("P1")], [done("P1")], { issued: await issuedWith(new Map()) });
    expect(of("P1")).toMatchObject({ verdictThen: null, verdictNow: "pass", needsNewVerdict: true, recall: false });
    expect(of("P1").text).toContain("no verdict on this point");
  });

  it("recalls an order whose point stands twice in the proposal by now", async () => {
    const issued = await issuedWith(new Map([[idOf("P1"), PASSED]]));
    const { of } = await checkRows([proposal("P1"), proposal("P1")], [done("P1")], { issued });
    expect(of("P1")).toMatchObject({ status: "twice", verdictThen: "pass", verdictNow: "fail", recall: true });
  });

  it("says what has changed since: rulebook, surveys, points that are gone", async () => {
    const issued = await issuedWith(new Map([[idOf("P7"), { ...PASSED, point: "P7" }]]), {
      rulebook: { name: "spotface rulebook", version: "0.0.9", digest: "9".repeat(64) },
      surveys: [
        { file: "proposed.xlsx", digest: "8".repeat(64) },
        { file: "other.xlsx", digest: "7".repeat(64) },
        { file: "renamed.xlsx", digest: "0".repeat(64) },
      ],
    });
    const { check } = await checkRows([proposal("P1")], [done("P1")], { issued });
    expect(check.head.issued).toMatchObject({
      rulebookChanged: true,
      surveys: [{ now: "0".repeat(64) }, { now: null }, { now: "0".repeat(64) }],
      gone: [{ id: idOf("P7"), point: "P7", verdict: "pass" }],
    });
  });
});
