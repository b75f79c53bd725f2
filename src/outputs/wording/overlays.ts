import { plainWords } from "../../facts/index.js";
import type { ChangedBy, RulebookShown, RuleShown } from "../../screening/index.js";

/** A book by name and version. */
interface Named {
  readonly name: string;
  readonly version: string;
}

/** A rulebook with the overlays that lie over it ("spotface rulebook 0.4.0 with works book 2.1.0"). */
export function bookInWords(book: Named & { readonly overlays: readonly Named[] }): string {
  const over = overlaysNamed(book);
  return `${book.name} ${book.version}${over === null ? "" : ` with ${over}`}`;
}

/** Names and versions of the overlays; null where there are none. */
export function overlaysNamed({ overlays }: { readonly overlays: readonly Named[] }): string | null {
  return overlays.length === 0 ? null : overlays.map(({ name, version }) => `${name} ${version}`).join(", ");
}

/** Keys that are told by the words of people; others as they are spelled. */
const KEY_WORDS: ReadonlyMap<string, string> = new Map([
  ["limits", "limit"],
  ["facts", "values"],
  ["entries", "values"],
  ["measures", "accuracies"],
  ["citations", "sources"],
  ["appliesWhen", "when it applies"],
  ["judges", "what it judges"],
  ["undecided", "weight of what is open"],
  ["when", "condition"],
]);

/** Keys that no outcome rests on, and sources, which come along with what they are the sources of. */
const UNTOLD: ReadonlySet<string> = new Set(["cases", "casesGive", "addsCases"]);
const WITH_SOURCES: ReadonlySet<string> = new Set(["limits", "facts", "entries", "measures"]);

/** What is changed ("limit, remedy"); null where nothing is but cases. */
function keysInWords(keys: readonly string[]): string | null {
  const hasValues = keys.some((key) => WITH_SOURCES.has(key));
  const told = keys.filter((key) => !UNTOLD.has(key) && !(hasValues && key === "citations"));
  return told.length === 0 ? null : told.map((key) => KEY_WORDS.get(key) ?? plainWords(key)).join(", ");
}

/** A change with the word of the site ("limit by works book: our bolts are shorter (A. Quill, 2026-05-04)"). */
function siteChangeInWords({ overlay, keys, loosens, reason, by, on }: ChangedBy): string | null {
  const what = keysInWords(keys);
  if (what === null) return null;
  const looser = loosens.length === 0 ? "" : `; ${loosens.join("; ")}`;
  return `${what} by ${overlay}: ${reason} (${by}, ${on})${looser}`;
}

/** What overlays have to do with a rule, a line for each. */
export function overlaysInWords({ addedBy, changedBy }: Pick<RuleShown, "addedBy" | "changedBy">): readonly string[] {
  return [
    ...(addedBy === null ? [] : [`a rule of ${addedBy}`]),
    ...changedBy.flatMap((change) => siteChangeInWords(change) ?? []),
  ];
}

/** What one overlay changes, adds and switches off: a line for each thing. */
export function overlayLines({
  overlays,
  switchedOff,
}: RulebookShown): readonly (readonly [string, readonly string[]])[] {
  return overlays.map(({ name, version, added, changed }) => [
    `${name} ${version}`,
    [
      ...switchedOff
        .filter(({ overlay }) => overlay === name)
        .map(({ rule, reason, by, on }) => `rule ${rule}: switched off, ${reason} (${by}, ${on})`),
      ...changed.flatMap(({ kind, id, ...change }) => {
        const said = siteChangeInWords({ ...change, overlay: name });
        return said === null ? [] : [`${kindInWords(kind)} ${id}: ${said}`];
      }),
      ...added.map(({ kind, id }) => `${kindInWords(kind)} ${id}: added`),
    ],
  ]);
}

function kindInWords(kind: string): string {
  return kind === "measuring" ? "way of measuring" : kind;
}
