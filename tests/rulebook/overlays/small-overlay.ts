import type { TextFile } from "../../../src/base/index.js";
import type { OverlayFiles } from "../../../src/rulebook/index.js";
import { SMALL_GROUPS, smallFiles } from "../small-book.js";

/** Rules of which an overlay may take nothing away. */
const GUARDED: Readonly<Record<string, string>> = {
  "safety/locked.yaml": `id: locked
title: "the machine can be locked"
sets: [full]
stages: [proposed, installed]
appliesWhen: { condition: sideways }
limits:
  - { from: 2026-01-01, until: null, fail: { when: { fact: isolation_possible, operator: equal, value: false } }, cites: [lock] }
citations:
  lock: { basis: common-practice, says: "what turns is locked" }
messages: { fail: "it cannot be locked" }
remedy: { text: "a lock", change: [] }
undecided: fail
releases: never
cases:
  - { name: "locked", given: { isolation_possible: true }, expect: pass }
  - { name: "open", given: {}, expect: undecided }
  - { name: "not locked", given: { isolation_possible: false }, expect: fail }
casesGive: { direction: radial, asOf: 2026-06-01 }
`,
};

/** The files of an overlay over the small book that loads; tests break one thing in it at a time. */
export const SMALL_OVERLAY: Readonly<Record<string, string>> = {
  "overlay.yaml": `name: "works book"
version: "2.1.0"
over: { name: "small book", version: "1.0.0" }
`,
  "changes/thread.yaml": `changes: { rule: thread-depth }
replaces:
  limits:
    - from: 2026-01-01
      until: null
      fail: { below: 8 mm }
      cites: [own]
  citations:
    own: { basis: company-practice, says: "our bolts are shorter" }
  messages: { fail: "the thread is {thread_depth} deep" }
  undecided: warn
  cases:
    - { name: "deep", given: { thread_depth: 8 mm }, expect: pass }
    - { name: "short", given: { thread_depth: 7.9 mm }, expect: fail }
    - { name: "open", given: {}, expect: undecided }
reason: "our bolts are shorter"
by: "A. Quill, vibration engineer"
on: 2026-05-04
`,
  "changes/model.yaml": `changes: { model: baseline }
replaces: { alsoWritten: ["BASE-1", "OLD-1"] }
reason: "the store calls it OLD-1"
by: "A. Quill, vibration engineer"
on: 2026-05-04
`,
  "changes/load.yaml": `changes: { rule: load }
addsCases:
  - { name: "half", given: { group.supply_current: 1.5 A }, expect: pass }
reason: "seen on site"
by: "A. Quill, vibration engineer"
on: 2026-05-05
`,
  "changes/slow.yaml": `changes: { rule: slow }
switchedOff: true
reason: "every shaft here turns fast"
by: "B. Sedge, site owner"
on: 2026-05-06
`,
  "conditions/indoors.yaml": `id: indoors
title: "the point stands under a roof"
when: { fact: wetting, operator: equal, value: dry }
`,
  "models/works-unit.yaml": `id: works-unit
title: "unit of the works"
facts:
  thread_depth_min:
    - { from: 2026-01-01, until: null, value: 7 mm, cites: [sheet] }
citations:
  sheet: { basis: from-memory, says: "made up for a test" }
`,
  "rules/seat/flat.yaml": `id: flat
title: "the flat is wide enough"
sets: [full]
stages: [proposed]
appliesWhen: { condition: indoors }
judges: flat_diameter
limits:
  - { from: 2026-01-01, until: null, fail: { below: 20 mm }, cites: [own] }
citations:
  own: { basis: company-practice, says: "made up for a test" }
messages: { fail: "the flat is narrow" }
remedy: { text: "grind", change: [flat_diameter] }
cases:
  - { name: "wide", given: { flat_diameter: 20 mm }, expect: pass }
  - { name: "narrow", given: { flat_diameter: 19 mm }, expect: fail }
  - { name: "open", given: {}, expect: undecided }
casesGive: { wetting: dry, model: works-unit, asOf: 2026-06-01 }
`,
};

/** The small book below, with groups and a rule that can never be released. */
export function bookBelow(changed: Readonly<Record<string, string | null>> = {}): readonly TextFile[] {
  return smallFiles({ ...SMALL_GROUPS, ...GUARDED, ...changed });
}

/** The overlay in a folder of its own, some of its files replaced, added or (null) left out. */
export function overlayFiles(changed: Readonly<Record<string, string | null>> = {}, root = "site"): OverlayFiles {
  const files = Object.entries({ ...SMALL_OVERLAY, ...changed }).flatMap(([path, text]) =>
    text === null ? [] : [{ path: `${root}/${path}`, text }],
  );
  return { root, files };
}

/** An overlay of nothing but these files. */
export function overlayOf(files: Readonly<Record<string, string>>, root = "site"): OverlayFiles {
  return { root, files: Object.entries(files).map(([path, text]) => ({ path: `${root}/${path}`, text })) };
}
