import type { Report } from "./source.js";

const TEXTS =
  "title|name|methods/says|messages/(?:fail|warn)|remedy/text|alsoWritten/\\d+|words/[a-z]+/\\d+|" +
  "citations/[^/]+/(?:says|source|clause)|cases/\\d+/name";

/** Where a rule, condition, model or manifest holds free text; ids, choices, days and quantities stand bare. */
const FREE_TEXT = new RegExp(`^/(?:${TEXTS})$`);

/** The same of the manifest of an overlay and of its change files. */
export const OVERLAY_FREE_TEXT = new RegExp(
  `^/(?:name|over/name|reason|by|addsCases/\\d+/name|replaces/(?:${TEXTS}))$`,
);

/**
 * Reports free texts without quotes: a colon, a number sign or a word such as "no" in a bare text sooner or later
 * means something else than its writer thought.
 *
 * @param freeText - pointers at which free text stands
 */
export function checkQuotes(report: Report, freeText: RegExp = FREE_TEXT): void {
  for (const pointer of report.bareTexts()) {
    if (!freeText.test(pointer)) continue;
    report.atValue(pointer, "no-quotes", "this text stands without quotes; put it in quotes");
  }
}
