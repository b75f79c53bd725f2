import { factName, plainWords } from "../../facts/index.js";
import type { MethodTried, PointResult } from "../../screening/index.js";
import { countOf } from "./numbers.js";

const NOUNS: Readonly<Record<string, string>> = {
  "tapped-hole": "a tapped hole",
  "adhesive-pad": "a bonded pad",
  "welded-pad": "a welded pad",
  magnet: "a magnet",
  clamp: "a clamp",
  "existing-hole": "an existing hole",
};

/** A mounting method as a thing that one plans ("a bonded pad"). */
export function methodNoun(method: string): string {
  return NOUNS[method] ?? plainWords(method);
}

/**
 * Another method than the proposed one, with what speaks against it and what it was not asked ("a bonded pad would pass
 * the rules asked"). Empty where none is advised, or none comes closer than the proposed one.
 */
export function otherMethodInWords({ methods, methodAdvised }: Pick<PointResult, "methods" | "methodAdvised">): string {
  const tried = methods?.find(({ method }) => method === methodAdvised?.method);
  if (!tried || tried.proposed) return "";
  const noun = methodNoun(tried.method);
  return [
    methodAdvised?.closest ? `closest: ${noun}` : `${noun} would pass the rules asked`,
    ...whatSpeaksAgainst(tried),
    ...(tried.notAsked.length === 0 ? [] : [`${countOf(tried.notAsked.length, "rule")} not asked for lack of columns`]),
  ].join("; ");
}

function whatSpeaksAgainst({ fails, warns, undecided, missing }: MethodTried): readonly string[] {
  return [
    ...(fails.length === 0 ? [] : [`fails: ${fails.join(", ")}`]),
    ...(warns.length === 0 ? [] : [`warns: ${warns.join(", ")}`]),
    ...(undecided.length === 0 ? [] : [`undecided: ${undecided.join(", ")}`]),
    ...(missing.length === 0 ? [] : [`to find out: ${missing.map(factName).join(", ")}`]),
  ];
}

/** Every method tried with all that speaks against it or was not asked, one per line; empty where none was tried. */
export function triedInWords({ methods }: Pick<PointResult, "methods">): string {
  const lines = (methods ?? []).map((tried) => {
    const against = [
      ...(tried.allowed ? [] : ["the site does not allow it"]),
      ...whatSpeaksAgainst(tried),
      ...(tried.asked.length === 0 ? ["nothing is asked of this method"] : []),
      ...(tried.notAsked.length === 0 ? [] : [`not asked, for lack of a column: ${tried.notAsked.join(", ")}`]),
    ];
    const named = `${methodNoun(tried.method)}${tried.proposed ? " (proposed)" : ""}`;
    return `${named}: ${tried.verdict}${against.length === 0 ? "" : `; ${against.join("; ")}`}`;
  });
  return lines.join("\n");
}
