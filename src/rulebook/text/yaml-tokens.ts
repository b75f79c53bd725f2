import type { CST } from "yaml";

/** What the tokens of a file already show to be refused. */
export interface TokenTrouble {
  readonly offset: number;
  readonly code: string;
  readonly text: string;
}

const REFUSED: ReadonlyMap<string, readonly [code: string, text: string]> = new Map([
  ["alias", ["alias", "an alias (*) is not allowed; write the value out"]],
  ["anchor", ["anchor", "an anchor (&) is not allowed; write the value out where it is needed"]],
  ["tag", ["tag", "a tag (!) is not allowed; put text that begins with ! in quotes"]],
  ["directive", ["directive", "a directive (%) is not allowed; leave the line out"]],
]);

interface Step {
  readonly token: CST.Token;
  readonly depth: number;
}

/**
 * Looks through the token tree with a list of its own instead of recursion, so that nesting of any depth is
 * refused before the building of nodes, which does recurse, ever sees it.
 *
 * @returns the first trouble in the order of the file, or null
 */
export function checkTokens(tokens: readonly CST.Token[], deepest: number): TokenTrouble | null {
  const found: TokenTrouble[] = [];
  const documents = tokens.filter((token) => token.type === "document");
  const second = documents[1];
  if (second) {
    found.push({
      offset: second.offset,
      code: "second-document",
      text: "a second document (---) is not allowed; one per file",
    });
  }
  const steps: Step[] = tokens.map((token) => ({ token, depth: 0 }));
  for (let step = steps.pop(); step !== undefined; step = steps.pop()) {
    const { token, depth } = step;
    const refused = REFUSED.get(token.type);
    if (refused && "offset" in token) found.push({ offset: token.offset, code: refused[0], text: refused[1] });
    if (depth > deepest) {
      const text = `nested more than ${deepest} deep; no rule needs that, write it flatter`;
      found.push({ offset: token.offset, code: "too-deep", text });
      continue;
    }
    for (const inner of innerTokens(token)) steps.push({ token: inner, depth: depth + (isCollection(inner) ? 1 : 0) });
  }
  return found.reduce<TokenTrouble | null>((a, b) => (a === null || b.offset < a.offset ? b : a), null);
}

function isCollection(token: CST.Token): boolean {
  return token.type === "block-map" || token.type === "block-seq" || token.type === "flow-collection";
}

function innerTokens(token: CST.Token): CST.Token[] {
  if (token.type === "document") return [...token.start, ...(token.value ? [token.value] : [])];
  if (token.type !== "block-map" && token.type !== "block-seq" && token.type !== "flow-collection") return [];
  const inner: CST.Token[] = [];
  for (const item of token.items) {
    inner.push(...item.start);
    if (item.key) inner.push(item.key);
    if (item.sep) inner.push(...item.sep);
    if (item.value) inner.push(item.value);
  }
  return inner;
}

/**
 * Where a bracket or quote is opened that is never closed, the innermost one: more useful to people than the place,
 * often the end of the file, at which that is noticed.
 */
export function findUnclosed(tokens: readonly CST.Token[]): TokenTrouble | null {
  let last: TokenTrouble | null = null;
  const rest = [...tokens];
  for (let token = rest.pop(); token !== undefined; token = rest.pop()) {
    const mark = openMark(token);
    if (mark !== null && "offset" in token && (last === null || token.offset > last.offset)) {
      last = { offset: token.offset, code: "not-yaml", text: `this ${mark} is never closed; close it` };
    }
    rest.push(...innerTokens(token));
  }
  return last;
}

/** The bracket or quote that a token opens and does not close, or null. */
function openMark(token: CST.Token): string | null {
  if (token.type === "flow-collection") return token.end.length === 0 ? token.start.source : null;
  if (token.type !== "double-quoted-scalar" && token.type !== "single-quoted-scalar") return null;
  const quote = token.source[0] ?? "";
  return token.source.length > 1 && token.source.endsWith(quote) ? null : quote;
}
