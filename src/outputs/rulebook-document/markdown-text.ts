import { createElement, Fragment } from "preact";
import { renderToString } from "preact-render-to-string";
import { shownText } from "../html/shown-text.js";

/**
 * A text as Markdown shows it letter by letter. Every sign that could begin something is escaped with a backslash,
 * which CommonMark (0.31, section 2.4) allows before any ASCII punctuation; line ends become blanks, so that nothing
 * can begin a line of its own, and many blanks one.
 */
export function markdownText(text: string): string {
  return shownText(text)
    .replace(/\s+/g, " ")
    .replace(/[\\`*_{}[\]<>|~&$#!]/g, "\\$&")
    .replace(/(?<=:)\/\/|(?<=\bwww)\./gi, (sign) => `\\${sign}`)
    .replace(/^(\s*)([-+=]|\d{1,9}(?=[.)](?:\s|$)))/, (_, blanks: string, sign: string) =>
      /\d/.test(sign) ? `${blanks}${sign}\\` : `${blanks}\\${sign}`,
    );
}

/** A text as code: within more backticks than it has itself; a bar would end the cell of a table. */
export function markdownCode(text: string): string {
  const shown = shownText(text).replace(/\s*\n\s*/g, " ");
  const longest = Math.max(0, ...[...shown.matchAll(/`+/g)].map(([run]) => run.length));
  const fence = "`".repeat(longest + 1);
  const pad = shown.startsWith("`") || shown.endsWith("`") ? " " : "";
  return `${fence}${pad}${shown.replaceAll("|", "\\|")}${pad}${fence}`;
}

/** A text within an element of HTML, where Markdown is not read. */
export function htmlText(text: string): string {
  return renderToString(createElement(Fragment, null, shownText(text).replace(/\s+/g, " ")));
}

/** A path beside the document as the target of a link. */
export function markdownPath(path: string): string {
  return path.split("/").map(markdownId).join("/");
}

/** An id as an attribute of HTML and as an address within the document. */
export function markdownId(id: string): string {
  return encodeURIComponent(shownText(id)).replace(/[!'()*]/g, (sign) => `%${sign.charCodeAt(0).toString(16)}`);
}
