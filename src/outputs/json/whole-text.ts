import type { MethodTried, PointResult } from "../../screening/index.js";
import { jsonText } from "./json-text.js";
import { advisedShape } from "./method-shapes.js";

/** Members that say something of a point as a whole; they stand between its place and its findings. */
export type WholeMember = "methods" | "methodAdvised" | "settledBy";

/** The members of a method tried, each with the text of its value; one that is forgotten does not compile. */
const METHOD_MEMBERS: { readonly [K in keyof MethodTried]-?: (tried: MethodTried) => string } = {
  method: ({ method }) => `"${method}"`,
  proposed: ({ proposed }) => String(proposed),
  allowed: ({ allowed }) => String(allowed),
  verdict: ({ verdict }) => `"${verdict}"`,
  fails: ({ fails }) => idsText(fails),
  warns: ({ warns }) => idsText(warns),
  undecided: ({ undecided }) => idsText(undecided),
  missing: ({ missing }) => idsText(missing),
  asked: ({ asked }) => idsText(asked),
  notAsked: ({ notAsked }) => idsText(notAsked),
};
const OPENINGS = Object.entries(METHOD_MEMBERS).map(
  ([member, text], i) => [`${i === 0 ? "{" : ","}"${member}":`, text] as const,
);

/** What is said of a point as a whole, as members of its JSON without the braces. */
export function wholeText({ methods, methodAdvised, settledBy }: Pick<PointResult, WholeMember>): string {
  const advised = methodAdvised === null ? "null" : jsonText(advisedShape(methodAdvised));
  const settled = settledBy === null ? "null" : idsText(settledBy);
  const tried = methods === null ? "null" : `[${methods.map(methodText).join(",")}]`;
  return `"methods":${tried},"methodAdvised":${advised},"settledBy":${settled}`;
}

function methodText(tried: MethodTried): string {
  let result = "";
  for (const [opening, text] of OPENINGS) result += opening + text(tried);
  return `${result}}`;
}

/** Ids of rules, facts and methods hold nothing that JSON would escape. */
function idsText(ids: readonly string[]): string {
  return ids.length === 0 ? "[]" : `["${ids.join('","')}"]`;
}
