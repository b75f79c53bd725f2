import { type Broken, mistakesIn } from "./broken.js";

const GROUP = "groups/supply.yaml";
const BEARING = "groups/bearing.yaml";
const RULE_OF_GROUP = "supply/load.yaml";
const RULE_OF_POINTS = "hole/thread-depth.yaml";

/** Ways in which a group, or what a rule says of one, can be wrong. */
export const GROUP_MISTAKES: readonly Broken[] = [
  ...mistakesIn(GROUP, [
    ["group without a key", "key: [supply_name]", "key: ▶[]", "list-too-short", "at least one fact"],
    ["key that is no fact", "[supply_name]", "[▶supply_nam]", "unknown-survey-fact", 'did you mean "supply_name"?'],
    ["key that is a number", "[supply_name]", "[supply_name, ▶supply_voltage]", "bad-key", "may be inexact"],
    ["key that is the site", "[supply_name]", "[supply_name, ▶site]", "bad-key", "part of every key"],
    ["key said twice", "[supply_name]", "▶[supply_name, supply_name]", "said-twice"],
    ["fact that no group has", "group.supply_rating:", "▶group.supply_ratng:", "unknown-key", "group.supply_rating"],
    ["member without a way", "{ sum: sensor_current }", "▶{}", "too-few-keys", "one of sum, minimum"],
    ["way that is none", "{ sum: sensor_current }", "{ ▶total: sensor_current }", "unknown-key"],
    [
      "two ways",
      "group.supply_current: { sum: sensor_current }",
      "▶group.supply_current: { sum: sensor_current, maximum: sensor_current }",
      "one-way-wanted",
      "found sum and maximum",
    ],
    [
      "condition without a way",
      "group.supply_current: { sum: sensor_current }",
      "▶group.supply_current: { where: { fact: sensor_current, operator: greaterThan, value: 1 A } }",
      "one-way-wanted",
      "found no way",
    ],
    ["sum of words", "{ sum: sensor_current }", "{ sum: ▶supply_name }", "member-does-not-fit", "taken of numbers"],
    [
      "sum in another unit",
      "{ sum: sensor_current }",
      "{ sum: ▶supply_voltage }",
      "member-does-not-fit",
      "name a fact of the same kind",
    ],
    [
      "sum of another current",
      "group.supply_current: { sum: sensor_current }",
      "group.supply_current: ▶{ sum: starting_current }",
      "not-of-this-fact",
      "rests on sensor_current",
    ],
    [
      "current that is counted",
      "{ sum: sensor_current }",
      "{ count: ▶true }",
      "member-does-not-fit",
      "a number of rows",
    ],
    ["count of nothing", "{ count: { where:", "{ count: { ▶were:", "unknown-key"],
    ["count that is none", "{ sum: sensor_current }", "{ count: ▶false }", "unknown-count"],
    [
      "condition beside a count",
      "{ count: { where: { fact: criticality, operator: equal, value: A } } }",
      "{ count: true, ▶where: { fact: criticality, operator: equal, value: A } }",
      "where-of-no-use",
      "stands inside it",
    ],
    [
      "condition beside what all state",
      "{ same: supply_rating }",
      "{ same: supply_rating, ▶where: { fact: criticality, operator: equal, value: A } }",
      "where-of-no-use",
      "every row",
    ],
    ["choice that the fact lacks", "value: A }", "value: ▶D }", "unknown-choice"],
    [
      "condition on another fact",
      "where: { fact: criticality, operator: equal, value: A }",
      "where: ▶{ fact: direction, operator: equal, value: axial }",
      "not-of-this-fact",
      "rests on criticality",
    ],
    [
      "fact of two groups",
      "group.supply_rating: { same",
      "▶group.radial_directions: { distinct: direction }\n  group.supply_rating: { same",
      "fact-of-two-groups",
      'the group "bearing" states "group.radial_directions" already',
    ],
    ["title without quotes", '"points that name', "▶points that name", "no-quotes"],
    ["id that is not the file name", "id: supply", "id: ▶suply", "id-is-not-file-name"],
  ]),
  ...mistakesIn(BEARING, [
    ["condition that is not there", "condition: sideways", "condition: ▶sidewise", "unknown-condition"],
    [
      "distinct numbers",
      "distinct: direction, where: { condition: sideways }",
      "distinct: ▶nominal_speed",
      "member-does-not-fit",
    ],
  ]),
  ...mistakesIn(RULE_OF_GROUP, [
    ["group that is not there", "group: supply", "group: ▶suply", "unknown-group", 'did you mean "supply"?'],
    [
      "fact of a point",
      "judges: group.supply_current",
      "judges: ▶sensor_current",
      "not-of-this-group",
      "a fact of single points",
    ],
    [
      "fact of another group",
      "fact: group.critical_points_on_supply,",
      "fact: ▶group.radial_directions,",
      "not-of-this-group",
      'is of the group "bearing"',
    ],
    ["fact of no group", "fact: group.critical_points_on_supply,", "fact: ▶group.axial_points,", "fact-of-no-group"],
    [
      "message on a single point",
      "{supply_name} has",
      "{direction} has",
      "not-of-this-group",
      null,
      '"the supply {direction}',
    ],
    [
      "condition on single points",
      'appliesWhen: { fact: supply_name, operator: notEqual, value: "battery" }',
      "appliesWhen: { condition: ▶sideways }",
      "not-of-this-group",
      '"direction" is a fact of single points',
    ],
    [
      "remedy of no use",
      "change: [supply_name, supply_rating]",
      "change: [supply_name, ▶criticaliti]",
      "unknown-survey-fact",
    ],
    ["remedy that changes nothing", "change: [supply_name, supply_rating]", "change: [▶direction]", "change-of-no-use"],
  ]),
  ...mistakesIn(RULE_OF_POINTS, [
    [
      "fact of a group that nothing states",
      "{ fact: joints_in_path, operator: greaterThan, value: 3 }",
      "{ fact: ▶group.axial_points, operator: greaterThan, value: 3 }",
      "fact-of-no-group",
    ],
  ]),
];
