import { describe, expect, it } from "vitest";
import { jsonDocument, ndjsonDocument } from "../../../src/outputs/index.js";
import { fact, finding, POINTS, point } from "../fake-findings.js";
import { HEAD } from "../fake-head.js";
import { fakeScreening, SUMMARY } from "../fake-screening.js";

describe("jsonDocument", () => {
  const text = [...jsonDocument(fakeScreening())].join("");

  it("keeps the fixed order of keys", () => {
    expect(Object.keys(JSON.parse(text))).toEqual([
      ..."program digest asOf stage set rulebook site reading deviations surveys skipped models tables rules groups cautions".split(
        " ",
      ),
      "points",
      "summary",
    ]);
  });

  it("writes one point per line", () => {
    const lines = text.split("\n");
    for (const one of POINTS) {
      const line = lines.find((candidate) => candidate.includes(`"row":${one.row},`)) ?? "";
      expect(JSON.parse(line.replace(/,$/, ""))).toMatchObject({ row: one.row, verdict: one.verdict });
    }
  });

  it("is not misled by texts that look like its own members", () => {
    const odd = '"facts":[] "cells":[]\u0001';
    const tricky = point(9, "fail", [
      finding("min-speed", "fail", {
        facts: [fact({ value: odd }), fact({ assumed: odd, cells: [{ sheet: odd, cell: "B2" }] })],
        message: odd,
        remedy: `,"facts":[],`,
      }),
    ]);
    expect(JSON.parse([...jsonDocument(fakeScreening([tricky]))].join("")).points).toEqual([tricky]);
  });

  it("says the same as the screening", () => {
    const read = JSON.parse(text);
    expect(read.summary).toEqual(SUMMARY);
    expect(read.points.slice(1)).toEqual(POINTS.slice(1));
    expect(read.rulebook).toEqual(HEAD.rulebook);
  });

  it("writes no undefined, no minus zero and no endless number", () => {
    const odd = point(9, "warn", [
      finding("min-speed", "undecided", {
        facts: [fact({ lowest: -Infinity, highest: 1e21, accuracy: -0 })],
        margin: { value: Number.NEGATIVE_INFINITY, fraction: null },
      }),
    ]);
    const read = [...jsonDocument(fakeScreening([odd]))].join("");
    expect(read).not.toMatch(/undefined|Infinity|-0[,}]/);
    expect(JSON.parse(read).points[0].findings[0]).toMatchObject({
      facts: [{ lowest: null, highest: 1e21, accuracy: 0 }],
      margin: null,
    });
  });

  it("is JSON without any point", () => {
    expect(JSON.parse([...jsonDocument(fakeScreening([]))].join("")).points).toEqual([]);
  });

  it("hands out pieces while points are still being judged", () => {
    const pieces = jsonDocument(fakeScreening());
    expect(pieces.next().value).toMatch(/"points":\[$/);
    expect(pieces.next().value).toContain('"row":4');
  });

  it("does not end when the screening breaks off", () => {
    const broken = { ...fakeScreening(), points: breakingOff };
    const pieces: string[] = [];
    expect(() => {
      for (const piece of jsonDocument(broken)) pieces.push(piece);
    }).toThrow("broke off");
    expect(() => JSON.parse(pieces.join(""))).toThrow();
  });
});

function* breakingOff(): IterableIterator<never> {
  yield* [];
  throw new Error("broke off");
}

describe("ndjsonDocument", () => {
  it("writes a head, a line per point and a closing line", () => {
    const lines = [...ndjsonDocument(fakeScreening())];
    expect(lines.every((line) => line.endsWith("}\n") && line.indexOf("\n") === line.length - 1)).toBe(true);
    const parts = lines.map((line) => JSON.parse(line));
    const whole = JSON.parse([...jsonDocument(fakeScreening())].join(""));
    expect({ ...parts[0], points: parts.slice(1, -1), ...parts.at(-1) }).toEqual(whole);
  });
});
