import { STAGES } from "../../base/index.js";
import type { LimitEntry, Rule } from "../../rulebook/index.js";
import { inForce } from "../../rulebook/index.js";
import { conditionInWords, limitsShown } from "../../screening/index.js";
import { whereBroken } from "../wording/facts.js";
import { bandPicture } from "./band-picture.js";
import { type Block, type Entry, entry, idOf, joined, type Line, list, text } from "./block.js";
import { type BookShown, datesInWords } from "./book-shown.js";
import { boundValuesOn } from "./bound-values.js";
import { changesOfRule, recordLine } from "./change-record.js";
import { factLink, factLinks, messageInWords } from "./fact-words.js";
import { factsOfRule } from "./facts-used.js";
import { judgedBy, subjectOf } from "./limit-words.js";
import { caseBlocks } from "./rule-cases.js";
import { siteEntry } from "./site-words.js";
import { sourceList, sourcesNamed } from "./sources.js";

/** A rule: what it demands, when, by which limits and why, what to do, what proves it, and what became of it. */
export function rulePart(rule: Rule, book: BookShown): readonly Block[] {
  return [
    { is: "heading", level: 4, id: idOf.rule(rule.id), line: [rule.title] },
    text(
      { code: rule.id },
      `, in the ${rule.sets.length === 1 ? "set" : "sets"} ${inWords(rule.sets)}; asked of ${askedOf(rule)}`,
    ),
    {
      is: "entries",
      entries: [
        appliesEntry(rule, book),
        judgedEntry(rule, book),
        ...rule.limits.map((limit, index) => limitEntry(rule, limit, index, book)),
        entry("If not known", ...undecidedLine(rule)),
        ...(rule.releases === null
          ? []
          : [entry("Deviations", { strong: "none is accepted" }, ": what this rule speaks of can hurt somebody")]),
        { label: "Why, by which source", blocks: sourceList(rule.citations) },
        ...siteEntry(rule, book),
        ...findingEntry(rule),
        remedyEntry(rule, book),
        entry("Rests on", ...factLinks(factsOfRule(rule, book.rulebook), book)),
        ...historyEntry(rule, book),
      ],
    },
    ...caseBlocks(rule, book),
  ];
}

/** "a, b and c" */
export function inWords(names: readonly string[]): string {
  return names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}

function askedOf({ stages, group }: Rule): string {
  const which = stages.length === STAGES.length ? "proposed and installed" : inWords(stages);
  return group === null ? `${which} points` : `groups of ${which} points, as a whole`;
}

function appliesEntry({ appliesWhen, group }: Rule, { rulebook }: BookShown): Entry {
  const words = appliesWhen === null ? null : conditionInWords(appliesWhen, rulebook);
  const title = group === null ? undefined : rulebook.groups.get(group)?.title;
  if (group === null) return entry("Applies", words === null ? "to every point" : `where ${words}`);
  const each: Line = ["to each group of ", { link: title ?? group, to: idOf.group(group) }];
  return entry("Applies", ...each, words === null ? "" : `, where ${words}`);
}

function judgedEntry({ judges, stages }: Rule, book: BookShown): Entry {
  const ids = [...new Set(stages.map((stage) => judges[stage]))];
  const [first = null] = ids;
  if (ids.length < 2) return entry("Judged", first === null ? "the conditions below" : factLink(first, book));
  const parts = stages.map((stage): Line => {
    const id = judges[stage];
    return [`${stage}: `, id === null ? "the conditions below" : factLink(id, book)];
  });
  return entry("Judged", ...joined(parts, "; "));
}

/** A dated limit: when it holds, where it is broken, and its picture while it is not past. */
function limitEntry(rule: Rule, limit: LimitEntry, index: number, book: BookShown): Entry {
  const { rulebook, asOf } = book;
  const judged = judgedBy(rule);
  const shown = limitsShown(limit, judged[0] ?? null, rulebook);
  const items = shown.map((one): Line => [{ outcome: one.outcome }, ` ${whereBroken(one, subjectOf(rule))}`]);
  const isPast = limit.until !== null && limit.until <= asOf;
  const day = inForce(limit, asOf) ? asOf : limit.from;
  const id = `bands-${rule.id}-${index + 1}`;
  const picture = isPast ? null : bandPicture(id, limit, judged, boundValuesOn(rulebook, day));
  return {
    label: rule.limits.length === 1 ? "Limit" : `Limit ${index + 1}`,
    blocks: [
      text(`${capital(datesInWords(limit, asOf))}${sourcesNamed(limit.cites, rule.citations)}:`),
      ...list(items),
      ...(picture === null ? [] : [{ is: "picture" as const, picture }]),
    ],
  };
}

function undecidedLine({ undecided }: Rule): Line {
  if (undecided === "warn") return [{ outcome: "undecided" }, "; counts as a warning in the verdict"];
  return [{ outcome: "undecided" }, "; ", { strong: "counts as a fail" }, " in the verdict, because it must be known"];
}

function findingEntry({ messages }: Rule): readonly Entry[] {
  const items = (["fail", "warn"] as const).flatMap((outcome): readonly Line[] => {
    const message = messages[outcome];
    return message === undefined ? [] : [[{ outcome }, `: ${messageInWords(message)}`]];
  });
  return items.length === 0 ? [] : [{ label: "A finding says", blocks: list(items) }];
}

function remedyEntry({ remedy }: Rule, book: BookShown): Entry {
  const change: readonly Block[] =
    remedy.change.length === 0 ? [] : [text("What can be changed: ", ...factLinks(remedy.change, book))];
  return { label: "What to do", blocks: [text(remedy.text), ...change] };
}

function historyEntry(rule: Rule, book: BookShown): readonly Entry[] {
  const ids = new Set(book.rules.map(({ id }) => id));
  const items = changesOfRule(book.changes, rule.id).map(
    ({ heading, item }): Line => [{ strong: heading }, ": ", ...recordLine(item, ids, idOf.rule)],
  );
  return items.length === 0 ? [] : [{ label: "History", blocks: list(items) }];
}

function capital(sentence: string): string {
  return sentence.charAt(0).toUpperCase() + sentence.slice(1);
}
