import type { Line, Piece } from "./block.js";

/** What a change record says of one version. */
export interface VersionChanges {
  /** The heading ("0.2.0, in force from 2026-01-01"). */
  readonly heading: string;
  /** Its paragraphs and list entries, each in one line. */
  readonly items: readonly string[];
}

/** The versions of a change record, in its order. */
export type ChangeRecord = readonly VersionChanges[];

/**
 * Reads a change record: versions under headings of the second level, below them list entries and paragraphs. Other
 * Markdown stays as it is written.
 *
 * @param overlay - name of the overlay that it is the record of, which its headings then begin with; null for none
 */
export function readChangeRecord(markdown: string, overlay: string | null): ChangeRecord {
  const versions: { heading: string; items: string[] }[] = [];
  let isOpen = false;
  for (const line of markdown.split(/\r\n|\r|\n/)) {
    const heading = /^##\s+(.*\S)/.exec(line)?.[1];
    const bullet = /^\s*[-*+]\s+(.*\S)/.exec(line)?.[1];
    const last = versions.at(-1);
    if (heading !== undefined)
      versions.push({ heading: overlay === null ? heading : `${overlay} ${heading}`, items: [] });
    else if (last === undefined || line.trim() === "") isOpen = false;
    else if (bullet !== undefined || !isOpen) last.items.push(bullet ?? line.trim());
    else last.items.push(`${last.items.pop()} ${line.trim()}`);
    isOpen = heading === undefined && last !== undefined && line.trim() !== "";
  }
  return versions;
}

/** What the record says of a rule, version by version; long lists of other ids are cut to their number. */
export function changesOfRule(
  record: ChangeRecord,
  id: string,
): readonly { readonly heading: string; readonly item: string }[] {
  return record.flatMap(({ heading, items }) =>
    items.filter((item) => item.includes(`\`${id}\``)).map((item) => ({ heading, item: withoutOthers(item, id) })),
  );
}

/** Ids that follow each other, divided by commas or "and". */
const RUN = /`[^`]+`(?:(?:,\s*(?:and\s+)?|\s+and\s+)`[^`]+`)+/g;
const FEW = 3;

function withoutOthers(item: string, id: string): string {
  return item.replace(RUN, (run) => {
    const ids: readonly string[] = run.match(/`[^`]+`/g) ?? [];
    if (ids.length <= FEW) return run;
    const own = `\`${id}\``;
    const kept = ids.includes(own) ? own : ids[0];
    return `${kept} and ${ids.length - 1} others`;
  });
}

/** A text of the record with what stands in backticks as code, and ids of rules leading to them. */
export function recordLine(text: string, ruleIds: ReadonlySet<string>, to: (id: string) => string): Line {
  return text.split(/`([^`]+)`/).map((part, index): Piece => {
    if (index % 2 === 0) return part;
    return ruleIds.has(part) ? { code: part, to: to(part) } : { code: part };
  });
}
