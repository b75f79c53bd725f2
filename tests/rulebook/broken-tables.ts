import { type Broken, mistakesIn } from "./broken.js";

const ROW = "{ bolt_steel: carbon-steel, thread_state: locked, table.friction_min: 0.15, table.friction_max: 0.25 }";

/** Mistakes in the tables of the small book, and in rules that need tables. */
export const TABLE_MISTAKES: readonly Broken[] = [
  ...mistakesIn("tables/threads.yaml", [
    ["id that differs from the file", "id: threads", "id: ▶thread", "id-is-not-file-name"],
    ["key that no table has", "title:", "▶titel:", "unknown-key", 'did you mean "title"?'],
    ["table without sources", "    cites: [measured]\n", "", "missing-key", "cites", "from: 2026-01-01"],
    ["unknown key fact", "[bolt_steel, thread_state]", "[▶bolt_stel, thread_state]", "unknown-key-fact", "bolt_steel"],
    [
      "key fact that no table is looked up by",
      "[bolt_steel, thread_state]",
      "[bolt_steel, ▶hole_depth]",
      "unknown-key-fact",
    ],
    ["unknown table fact", "gives: [table.friction_min", "gives: [▶table.friction_mn", "unknown-table-fact"],
    [
      "fact looked up by other facts",
      "gives: [table.friction_min, table.friction_max]",
      "gives: [table.friction_min, table.friction_max, ▶table.wall_left_min]",
      "looked-up-otherwise",
      "by nothing, and this table by",
    ],
    ["keys in another order", "[bolt_steel, thread_state]", "▶[thread_state, bolt_steel]", "looked-up-otherwise"],
    ["choice that no row has", `      - ${ROW}\n`, "", "choice-without-row", "carbon-steel with locked", "rows:"],
    [
      "choice of the key that is none",
      "thread_state: locked, table.friction_min: 0.15",
      "thread_state: ▶lockd, table.friction_min: 0.15",
      "unknown-choice",
      'did you mean "locked"?',
    ],
    ["row twice", `      - ${ROW}\n`, `      - ${ROW}\n      - ▶${ROW}\n`, "row-twice", "in line 14 already"],
    [
      "row without a value",
      ", table.friction_max: 0.25",
      "",
      "incomplete-row",
      "as null",
      "{ bolt_steel: carbon-steel, thread_state: locked",
    ],
    [
      "row without a key",
      "{ bolt_steel: carbon-steel, thread_state: locked,",
      "▶{ thread_state: locked,",
      "incomplete-row",
    ],
    [
      "value that the table does not give",
      "table.friction_max: 0.25",
      "table.friction_max: 0.25, ▶table.run_out_min: 1",
      "not-of-the-table",
    ],
    ["unknown fact in a row", "table.friction_max: 0.25", "table.friction_max: 0.25, ▶table.fricton: 1", "unknown-key"],
    ["value with a unit that it has not", "table.friction_max: 0.25", 'table.friction_max: ▶"0.25 N"', "not-a-number"],
    ["value of a wrong kind", "table.friction_max: 0.25", "table.friction_max: ▶true", "not-a-number"],
    ["value in a list", "table.friction_max: 0.25", "table.friction_max: ▶[0.25]", "wrong-kind"],
    ["value that cannot be meant", "table.friction_max: 0.25", "table.friction_max: ▶25", "implausible"],
    ["range upside down", "table.friction_max: 0.25", "table.friction_max: ▶0.1", "range-upside-down"],
    [
      "cite that is not there",
      "cites: [measured]",
      "cites: [▶mesured]",
      "unknown-citation",
      'did you mean "measured"?',
    ],
    [
      "citation that nothing cites",
      "citations:\n",
      'citations:\n  ▶idle: { basis: from-memory, says: "x" }\n',
      "unused-citation",
    ],
    ["review before the start", "reviewBy: 2027-01-01", "reviewBy: ▶2025-12-31", "review-before-start"],
    ["end before the start", "until: null", "until: ▶2025-12-31", "ends-before-start"],
    ["title without quotes", 'title: "friction"', "title: ▶friction", "no-quotes"],
  ]),
  ...mistakesIn("tables/gaps.yaml", [
    ["entries with a gap", "from: 2026-07-01", "from: ▶2026-08-01", "gap"],
    ["entries that overlap", "from: 2026-07-01", "from: ▶2026-06-01", "overlap"],
    [
      "second row where nothing tells it apart",
      "[{ table.run_out_min: 1, table.run_out_usual: 3 }]",
      "[{ table.run_out_min: 1, table.run_out_usual: 3 }, ▶{ table.run_out_min: 2, table.run_out_usual: 4 }]",
      "row-twice",
      "looked up by nothing",
    ],
    ["no row", "[{ table.run_out_min: 1, table.run_out_usual: 3 }]", "▶[]", "list-too-short"],
    ["table looked up by nothing", "by: []", "by: ▶[thread_state]", "looked-up-otherwise", "looked up by nothing"],
  ]),
  ...mistakesIn("hole/thread-depth.yaml", [
    ["fact that no table has", "judges: thread_depth", "judges: ▶table.bolt", "unknown-fact"],
    [
      "bound that no table gives",
      "{ outside: [8 mm, 80 mm] }",
      "{ below: { fact: ▶table.wall_left_min } }",
      "no-table",
      "looked up by nothing",
    ],
    [
      "derived fact that needs a table",
      "{ fact: joints_in_path, operator: greaterThan, value: 3 }",
      "{ fact: ▶planned_preload, operator: greaterThan, value: 3 % }",
      "no-table",
      '"planned_preload" needs "table.proof_stress"',
    ],
    [
      "message that no table fills in",
      '"the thread is {thread_depth} deep"',
      '▶"the thread is {thread_depth} deep, needed {table.engagement_min}"',
      "no-table",
    ],
  ]),
  ...mistakesIn("conditions/outdoors.yaml", [
    [
      "condition that no table fills in",
      "when: { fact: wetting, operator: in, value: [jets, hot-high-pressure] }",
      "when: { fact: ▶table.wall_left_min, operator: lessThan, value: 3 mm }",
      "no-table",
    ],
  ]),
];
