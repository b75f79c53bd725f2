import { type Broken, mistakesIn } from "./broken.js";
import { CONDITION_MISTAKES } from "./broken-conditions.js";
import { GROUP_MISTAKES } from "./broken-groups.js";
import { LIMIT_MISTAKES, YAML_MISTAKES } from "./broken-limits.js";
import { TABLE_MISTAKES } from "./broken-tables.js";
import { WAY_MISTAKES } from "./broken-ways.js";

const RULE = "hole/thread-depth.yaml";
const OTHER_RULE = "speed/slow.yaml";
const MODEL = "models/baseline.yaml";
const BOOK = "rulebook.yaml";
const WORDS = "words/few.yaml";
const CONDITION = "conditions/outdoors.yaml";

/** At least one row for every way in which a file can be wrong. */
export const BROKEN: readonly Broken[] = [
  ...TABLE_MISTAKES,
  ...GROUP_MISTAKES,
  ...mistakesIn(RULE, [...CONDITION_MISTAKES, ...LIMIT_MISTAKES, ...YAML_MISTAKES]),
  ...mistakesIn("measuring/rule.yaml", WAY_MISTAKES),
  ...mistakesIn(OTHER_RULE, [
    [
      "stage judged that the rule is not for",
      "{ installed: nominal_speed }",
      "{ installed: nominal_speed, ▶proposed: nominal_speed }",
      "stage-of-no-use",
    ],
    ["case at a stage that the rule is not for", "stage: installed", "stage: ▶proposed", "stage-of-no-use"],
    [
      "choices that are all of them",
      "judges: { installed: nominal_speed }\nlimits:\n  - { from: 2026-01-01, until: null, fail: { below: 600 r/min }",
      "judges: { installed: supply_kind }\nlimits:\n  - { from: 2026-01-01, until: null, fail: { ▶oneOf: [dc, ac] }",
      "always-broken",
      "names every choice",
    ],
    [
      "choices that leave none",
      "judges: { installed: nominal_speed }\nlimits:\n  - { from: 2026-01-01, until: null, fail: { below: 600 r/min }",
      "judges: { installed: supply_kind }\nlimits:\n  - { from: 2026-01-01, until: null, fail: { ▶noneOf: [dc, ac] }",
      "never-broken",
      "leave out the bad ones",
    ],
    [
      "band where nothing is judged",
      "judges: { installed: nominal_speed }\n",
      "",
      "nothing-judged",
      null,
      "below: 600",
    ],
    [
      "number band for a choice",
      "{ installed: nominal_speed }",
      "{ installed: wetting }",
      "band-does-not-fit",
      null,
      "below: 600",
    ],
  ]),
  ...mistakesIn(MODEL, [
    ["fact that no model has", "torque_max:", "▶torque_mx:", "unknown-key", 'did you mean "torque_max"?'],
    ["value in a wrong unit", "value: 9 mm", "value: ▶9 V", "wrong-dimension"],
    ["torque in volts", "value: 10 N·m", "value: ▶10 V", "wrong-dimension", "a torque is wanted"],
    ["value without unit", "value: 9 mm", "value: ▶9", "no-unit"],
    ["written name without quotes", '"BASE-1"', "▶BASE-1", "no-quotes"],
    ["name that is the id", '"BASE-1"', '▶"Baseline"', "said-twice", "found by its id already"],
    ["name that is the title", '"BASE-1"', '▶"A Model"', "said-twice", "found by its title already"],
    ["name that stands twice", '"BASE-1"', '"BASE-1", ▶"base‐1"', "said-twice", 'found by "BASE-1" already'],
    ["length below zero", "value: 9 mm", "value: ▶-9 mm", "implausible", "check number and unit"],
    ["torque of zero", "value: 10 N·m", "value: ▶0 N·m", "implausible", "0.1 to 200 N·m"],
    ["length that cannot be meant", "value: 9 mm", "value: ▶9 m", "implausible"],
    [
      "highest voltage below the lowest",
      "  torque_max:",
      `  supply_voltage_max:
    - { from: 2026-01-01, until: 2026-05-01, value: 20 V, cites: [guess] }
    - { from: 2026-05-01, until: null, value: ▶18 V, cites: [guess] }
  supply_voltage_min:
    - { from: 2026-01-01, until: 2027-01-01, value: 18 V, cites: [guess] }
  torque_max:`,
      "range-upside-down",
      "in line 12",
    ],
    ["values with a gap", "from: 2027-01-01", "from: ▶2027-02-01", "gap"],
    ["values out of order", "from: 2027-01-01", "from: ▶2025-02-01", "out-of-order"],
    ["model cite that is not there", "value: 9 mm, cites: [guess]", "value: 9 mm, cites: [▶gues]", "unknown-citation"],
    [
      "model citation that nothing cites",
      "citations:\n",
      'citations:\n  ▶idle: { basis: from-memory, says: "x" }\n',
      "unused-citation",
    ],
  ]),
  ...mistakesIn(BOOK, [
    ["default set that is no set", "defaultSet: core", "defaultSet: ▶corn", "unknown-set", 'did you mean "core"?'],
    [
      "baseline that is no model",
      "baselineModel: baseline",
      "baselineModel: ▶basline",
      "unknown-model",
      'did you mean "baseline"?',
    ],
    [
      "gate that is no rule",
      "baselineModel: baseline\n",
      'baselineModel: baseline\nmethods: { lasting: [clamp], gates: [▶tread-depth], basis: from-memory, says: "x" }\n',
      "unknown-rule",
      'did you mean "thread-depth"?',
    ],
    ["name without quotes", '"small book"', "▶small book", "no-quotes"],
    ["version without quotes", 'version: "1.0.0"', "version: ▶1.0", "wrong-kind", "put it in quotes"],
    ["unknown language", "language: en", "language: ▶xx", "unknown-language"],
    ["include", "language: en", "language: en\n▶include: [../other.yaml]", "refused-key"],
  ]),
  ...mistakesIn(WORDS, [
    ["field that is not there", "wetting:", "▶weting:", "unknown-key", 'did you mean "wetting"?'],
    [
      "choice that the field lacks",
      'jets: ["hosed down"]',
      '▶jet: ["hosed down"]',
      "unknown-choice",
      'did you mean "jets"?',
    ],
    ["language of headings", "{ en:", "{ ▶it:", "unknown-key"],
  ]),
  ...mistakesIn(CONDITION, [
    [
      "condition that names itself",
      "when: { fact: wetting, operator: in, value: [jets, hot-high-pressure] }",
      "▶when: { condition: outdoors }",
      "condition-cycle",
      "outdoors needs outdoors",
    ],
    ["list item that is no choice", "value: [jets,", "value: [▶jetts,", "unknown-choice", 'did you mean "jets"?'],
  ]),
];
