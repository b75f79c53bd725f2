import { describe, expect, it } from "vitest";
import { otherMethodInWords, triedInWords } from "../../../src/outputs/wording/methods.js";
import { failAnywayInWords, notByFactsInWords, stepInWords } from "../../../src/outputs/wording/settling.js";
import type { MethodTried } from "../../../src/screening/index.js";

const TAPPED: MethodTried = {
  method: "tapped-hole",
  proposed: true,
  allowed: true,
  verdict: "fail",
  fails: ["hole-depth"],
  warns: [],
  undecided: [],
  missing: [],
  asked: ["hole-depth"],
  notAsked: [],
};
const BONDED: MethodTried = {
  ...TAPPED,
  method: "adhesive-pad",
  proposed: false,
  verdict: "pass",
  fails: [],
  asked: ["adhesive-cure"],
};

describe("another method in words", () => {
  it("passes the rules asked, and says how many were not asked", () => {
    const methodAdvised = { method: "adhesive-pad", verdict: "pass", closest: false } as const;
    const words = (bonded: MethodTried) => otherMethodInWords({ methods: [bonded, TAPPED], methodAdvised });
    expect(words(BONDED)).toBe("a bonded pad would pass the rules asked");
    expect(words({ ...BONDED, notAsked: ["pad-gap", "bond-heat"] })).toBe(
      "a bonded pad would pass the rules asked; 2 rules not asked for lack of columns",
    );
  });

  it("is only the closest, with what speaks against it and what is to be found out", () => {
    const bonded = {
      ...BONDED,
      verdict: "warn",
      warns: ["iron-dust"],
      undecided: ["adhesive-cure"],
      missing: ["cure_time"],
    } as const;
    const methodAdvised = { method: "adhesive-pad", verdict: "warn", closest: true } as const;
    expect(otherMethodInWords({ methods: [bonded, TAPPED], methodAdvised })).toBe(
      "closest: a bonded pad; warns: iron-dust; undecided: adhesive-cure; to find out: time between bonding and tightening",
    );
  });

  it("is not there where none comes closer than the proposed one, or none was tried", () => {
    const methodAdvised = { method: "tapped-hole", verdict: "fail", closest: true } as const;
    expect(otherMethodInWords({ methods: [TAPPED, BONDED], methodAdvised })).toBe("");
    expect(otherMethodInWords({ methods: null, methodAdvised: null })).toBe("");
  });

  it("tells of every method tried", () => {
    const clamp = { ...BONDED, method: "clamp", allowed: false, asked: [], notAsked: ["mount-frequency"] };
    expect(triedInWords({ methods: [BONDED, TAPPED, clamp] }).split("\n")).toEqual([
      "a bonded pad: pass",
      "a tapped hole (proposed): fail; fails: hole-depth",
      "a clamp: pass; the site does not allow it; nothing is asked of this method; not asked, for lack of a column: mount-frequency",
    ]);
    expect(triedInWords({ methods: null })).toBe("");
  });
});

describe("what to find out in words", () => {
  it("names the facts and the points that they settle", () => {
    expect(stepInWords({ facts: ["hole_depth", "thread_depth"], points: 14, pointsSoFar: 14 })).toBe(
      "hole depth, depth of full thread: settles 14 points",
    );
    expect(stepInWords({ facts: ["cure_time"], points: 1, pointsSoFar: 15 })).toBe(
      "time between bonding and tightening: settles 1 point more, 15 by then",
    );
    expect(failAnywayInWords(1)).toBe("1 point with something missing fails whatever it is");
    expect(failAnywayInWords(2)).toBe("2 points with something missing fail whatever it is");
    expect(notByFactsInWords(3)).toBe("3 points stay open whatever is found out: a limit is not in force");
  });
});
