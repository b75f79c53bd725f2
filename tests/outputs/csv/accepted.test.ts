import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { findingsCsv, pointsCsv } from "../../../src/outputs/index.js";
import type { Finding } from "../../../src/screening/index.js";
import { COATED_SEAT, point, THREAD_TOO_SHORT } from "../fake-findings.js";
import { HEAD } from "../fake-head.js";

function accepted(finding: Finding, acceptedBy: string, until: string, reason: string): Finding {
  return {
    ...finding,
    accepted: { reason, acceptedBy, from: "2026-01-01", until, origin: { file: "deviations.yaml", line: 3 } },
  };
}

const LATER = accepted(THREAD_TOO_SHORT, "A. Quill, engineer", "2027-05-01", "the wall is no thicker");
const SOONER = accepted(COATED_SEAT, "B. Marlow, head of maintenance", "2026-12-24", "=tested with the paint");

function columns(pieces: Iterable<string>): readonly (readonly (string | undefined)[])[] {
  const rows: readonly Record<string, string>[] = parse([...pieces].join(""), { columns: true });
  return rows.map((row) => ["accepted", "accepted by", "accepted until", "accepted because"].map((name) => row[name]));
}

describe("what somebody has accepted, in the tables", () => {
  it("is said of a point with all who did, all reasons, and the day on which the first of it ends", () => {
    const points = [
      { ...point(4, "fail", [LATER, SOONER]), accepted: true },
      { ...point(5, "fail", [THREAD_TOO_SHORT, SOONER]), accepted: false },
      point(6, "fail", [THREAD_TOO_SHORT]),
      { ...point(7, "fail", [LATER, { ...LATER, rule: "hole-depth" }]), accepted: true },
    ];
    const both = "A. Quill, engineer; B. Marlow, head of maintenance";
    expect(columns(pointsCsv(HEAD, points))).toEqual([
      ["yes", both, "2026-12-24", "the wall is no thicker; =tested with the paint"],
      ["in part", "B. Marlow, head of maintenance", "2026-12-24", "'=tested with the paint"],
      ["", "", "", ""],
      ["yes", "A. Quill, engineer", "2027-05-01", "the wall is no thicker"],
    ]);
  });

  it("is said of each finding for itself", () => {
    expect(columns(findingsCsv(HEAD, [point(4, "fail", [THREAD_TOO_SHORT, SOONER])]))).toEqual([
      ["", "", "", ""],
      ["yes", "B. Marlow, head of maintenance", "2026-12-24", "'=tested with the paint"],
    ]);
  });
});
