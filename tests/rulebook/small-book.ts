import type { TextFile } from "../../src/base/index.js";

/** The files of a small rulebook that loads; tests break one thing in it at a time. */
export const SMALL_BOOK: Readonly<Record<string, string>> = {
  "rulebook.yaml": `name: "small book"
version: "1.0.0"
language: en
sets: [core, full]
defaultSet: core
baselineModel: baseline
`,
  "models/baseline.yaml": `id: baseline
title: "a model"
alsoWritten: ["BASE-1"]
facts:
  thread_depth_min:
    - { from: 2026-01-01, until: 2027-01-01, value: 9 mm, cites: [guess] }
    - { from: 2027-01-01, until: null, value: 10 mm, cites: [guess] }
  torque_max:
    - { from: 2026-01-01, until: null, value: 10 N·m, cites: [guess] }
citations:
  guess: { basis: from-memory, says: "made up for a test" }
`,
  "tables/threads.yaml": `id: threads
title: "friction"
by: [bolt_steel, thread_state]
gives: [table.friction_min, table.friction_max]
entries:
  - from: 2026-01-01
    until: null
    reviewBy: 2027-01-01
    cites: [measured]
    rows:
      - { bolt_steel: carbon-steel, thread_state: dry, table.friction_min: 0.14, table.friction_max: 0.24 }
      - { bolt_steel: carbon-steel, thread_state: oiled, table.friction_min: 0.08, table.friction_max: 0.16 }
      - { bolt_steel: carbon-steel, thread_state: greased, table.friction_min: 0.09, table.friction_max: 0.17 }
      - { bolt_steel: carbon-steel, thread_state: locked, table.friction_min: 0.15, table.friction_max: 0.25 }
      - { bolt_steel: austenitic-stainless, thread_state: dry, table.friction_min: 0.3, table.friction_max: 0.5 }
      - { bolt_steel: austenitic-stainless, thread_state: oiled, table.friction_min: 0.2, table.friction_max: 0.35 }
      - { bolt_steel: austenitic-stainless, thread_state: greased, table.friction_min: 0.11, table.friction_max: 0.21 }
      - { bolt_steel: austenitic-stainless, thread_state: locked, table.friction_min: null, table.friction_max: null }
citations:
  measured: { basis: from-memory, says: "made up for a test" }
`,
  "tables/gaps.yaml": `id: gaps
title: "what is left free"
by: []
gives: [table.run_out_min, table.run_out_usual]
entries:
  - { from: 2026-01-01, until: 2026-07-01, cites: [tap], rows: [{ table.run_out_min: 1, table.run_out_usual: 3 }] }
  - { from: 2026-07-01, until: null, cites: [tap], rows: [{ table.run_out_min: 2, table.run_out_usual: 5 }] }
citations: { tap: { basis: from-memory, says: "made up for a test" } }
`,
  "conditions/outdoors.yaml": `id: outdoors
title: "the point stands in the open"
when: { fact: wetting, operator: in, value: [jets, hot-high-pressure] }
`,
  "words/few.yaml": `fields:
  wetting:
    headings: { en: ["Wetting"] }
    choices: { dry: ["dry"], jets: ["hosed down"] }
    examples:
      - { heading: "Wetting", cell: "dry", locale: en, expect: { value: dry } }
`,
  "measuring/gauge.yaml": `id: gauge
title: "gauge"
words:
  de: ["Lehre"]
  fr: ["gauge"]
measures:
  length:
    - { from: 2026-01-01, until: null, percent: 1, cites: [guess] }
citations:
  guess: { basis: from-memory, says: "made up for a test" }
`,
  "measuring/rule.yaml": `id: rule
title: "rule"
words:
  en: ["rule"]
only: [hole_depth]
measures:
  length:
    - { from: 2026-01-01, until: null, plusMinus: 0.5 mm, percent: 1, cites: [half] }
  temperature:
    - { from: 2026-01-01, until: null, plusMinus: 2 K, cites: [half] }
citations:
  half: { basis: common-practice, says: "half a division" }
`,
  "hole/thread-depth.yaml": `id: thread-depth
title: "the thread is deep enough"
sets: [core, full]
stages: [proposed, installed]
appliesWhen:
  all:
    - { fact: mounting_method, operator: equal, value: tapped-hole }
    - { not: { condition: outdoors } }
judges: thread_depth
limits:
  - from: 2026-01-01
    until: 2027-01-01
    reviewBy: 2026-12-01
    fail: { below: { fact: model.thread_depth_min } }
    cites: [bolt]
  - from: 2027-01-01
    until: null
    fail:
      - { outside: [8 mm, 80 mm] }
      - { when: { fact: joints_in_path, operator: greaterThan, value: 3 } }
    warn: { below: { fact: model.thread_depth_min, times: 1.2, plus: 1 mm } }
    cites: [bolt, margin]
citations:
  bolt: { basis: common-practice, says: "so long is the bolt" }
  margin: { basis: standard, source: "a standard", says: "some margin", clause: "5.1", readOn: 2026-01-02 }
messages:
  fail: "the thread is {thread_depth} deep"
  warn: "the thread is a little short"
remedy:
  text: "tap deeper"
  change: [thread_depth]
undecided: fail
cases:
  - { name: "deep", given: { thread_depth: 12 mm }, expect: pass }
  - { name: "open", given: { joints_in_path: 1 }, expect: undecided, missing: [thread_depth] }
  - { name: "short", given: { thread_depth: 8.9 mm }, expect: fail }
  - { name: "no margin", given: { thread_depth: 12.9 mm, asOf: 2027-01-01 }, expect: warn }
casesGive: { mounting_method: tapped-hole, wetting: dry, model: baseline, asOf: 2026-06-01 }
`,
  "speed/slow.yaml": `id: slow
title: "the shaft is not slow"
sets: [full]
stages: [installed]
judges: { installed: nominal_speed }
limits:
  - { from: 2026-01-01, until: null, fail: { below: 600 r/min }, cites: [slow] }
citations:
  slow: { basis: handbook, source: "a handbook", says: "slow is slow" }
messages: { fail: "slow" }
remedy: { text: "faster", change: [] }
cases:
  - { name: "slow", given: { nominal_speed: 10 r/s, stage: installed }, expect: pass }
  - { name: "slower", given: { nominal_speed: 9.9 r/s }, expect: fail }
  - { name: "open", given: {}, expect: undecided }
casesGive: { asOf: 2026-06-01 }
`,
};

/** Groups, a rule on one of them, and a condition that they use, to go with the small book. */
export const SMALL_GROUPS: Readonly<Record<string, string>> = {
  "groups/supply.yaml": `id: supply
title: "points that name the same supply"
key: [supply_name]
members:
  group.supply_current: { sum: sensor_current }
  group.supply_rating: { same: supply_rating }
  group.critical_points_on_supply: { count: { where: { fact: criticality, operator: equal, value: A } } }
`,
  "groups/bearing.yaml": `id: bearing
title: "points at the same bearing"
key: [asset_tag, component]
members:
  group.radial_directions: { distinct: direction, where: { condition: sideways } }
`,
  "conditions/sideways.yaml": `id: sideways
title: "the point looks across the shaft"
when: { fact: direction, operator: in, value: [horizontal, vertical, radial] }
`,
  "supply/load.yaml": `id: load
title: "the supply carries its points"
group: supply
sets: [full]
stages: [proposed]
appliesWhen: { fact: supply_name, operator: notEqual, value: "battery" }
judges: group.supply_current
limits:
  - from: 2026-01-01
    until: null
    fail: { above: { fact: group.supply_rating } }
    warn: { when: { fact: group.critical_points_on_supply, operator: greaterThan, value: 8 } }
    cites: [sum]
citations:
  sum: { basis: derivation, says: "currents add up" }
messages:
  fail: "the supply {supply_name} has {group.supply_current}"
  warn: "many critical points"
remedy:
  text: "a larger supply"
  change: [supply_name, supply_rating]
cases:
  - { name: "little", given: { group.supply_current: 1 A }, expect: pass }
  - { name: "too much", given: { group.supply_current: 3 A }, expect: fail }
  - { name: "many", given: { group.supply_current: 1 A, group.critical_points_on_supply: 9 }, expect: warn }
  - { name: "open", given: {}, expect: undecided }
casesGive: { supply_name: "PSU 1", group.supply_rating: 2 A, group.critical_points_on_supply: 0, asOf: 2026-06-01 }
`,
};

/** The small book as files, some of them replaced, added or (null) left out. */
export function smallFiles(changed: Readonly<Record<string, string | null>> = {}): readonly TextFile[] {
  return Object.entries({ ...SMALL_BOOK, ...changed }).flatMap(([path, text]) =>
    text === null ? [] : [{ path, text }],
  );
}
