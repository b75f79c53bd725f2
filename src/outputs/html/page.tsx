import { sha256 } from "@noble/hashes/sha2.js";
import type { ComponentChildren, VNode } from "preact";
import { renderToString } from "preact-render-to-string";
import { BASE_STYLE } from "./base-style.js";
import { shownText } from "./shown-text.js";

/** What a page is made of. */
export interface PageParts {
  readonly title: string;
  /** Rules of style beside those that all pages share. Attributes `style` have no effect under the policy of the page. */
  readonly style: string;
  /** Text of one script, or null. It must hold no `</script`. */
  readonly script: string | null;
  /** Where the link at the very beginning leads for those who read by keyboard or by ear: the id of an element. */
  readonly mainId: string;
  readonly body: ComponentChildren;
  /** JSON for the script, in pieces without any `<`; it is read, never run. Left out where there is none. */
  readonly data?: Iterable<string>;
}

/**
 * One HTML file that stands alone: one style, at most one script, both allowed by their hashes in its own policy
 * (Content Security Policy Level 3, hash sources), nothing fetched from anywhere. All text in `body` is escaped by the
 * library that writes it, and goes through `shownText`.
 *
 * @throws RangeError if the script would end before its end
 */
export function htmlPage(parts: PageParts): string {
  return [...htmlPagePieces(parts)].join("");
}

/**
 * The same in pieces, for pages with much data.
 *
 * @throws RangeError if the script would end before its end
 */
export function* htmlPagePieces({ title, style, script, mainId, body, data }: PageParts): Generator<string> {
  if (script !== null && /<\/script|<!--/iu.test(script))
    throw new RangeError("the script would close its own element");
  const styleText = `${BASE_STYLE}\n${style}`;
  const policy = [
    "default-src 'none'",
    `style-src '${hashOf(styleText)}'`,
    ...(script === null ? [] : [`script-src '${hashOf(script)}'`]),
    "img-src data:",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
  const head = shownMarkup(
    <>
      <meta charset="utf-8" />
      <meta http-equiv="Content-Security-Policy" content={policy} />
      <meta name="viewport" content="width=device-width, initial-scale=1" />
      <title>{title}</title>
    </>,
  );
  const inside = shownMarkup(
    <>
      <a class="skip" href={`#${mainId}`}>
        To the contents
      </a>
      {body}
    </>,
  );
  yield `<!doctype html>\n<html lang="en">\n<head>\n${head}\n<style>${styleText}</style>\n</head>\n<body>\n${inside}\n`;
  if (data !== undefined) {
    yield '<script type="application/json" id="data">';
    yield* data;
    yield "</script>\n";
  }
  yield `${script === null ? "" : `<script>${script}</script>\n`}</body>\n</html>\n`;
}

/** Of what a library has escaped, only characters of texts can be among those that nobody sees. */
function shownMarkup(content: VNode): string {
  return shownText(renderToString(content));
}

function hashOf(text: string): string {
  const bytes = sha256(new TextEncoder().encode(text));
  return `sha256-${btoa(String.fromCharCode(...bytes))}`;
}
