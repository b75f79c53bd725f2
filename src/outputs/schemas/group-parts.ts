import { CELL, defined, exactly, FACT, form, KEBAB, listOf, text, textOrNull, whole } from "./schema-words.js";

const FACT_AND_VALUE = exactly("A fact that the rows share.", {
  fact: form("Id of the fact.", FACT),
  value: text("Its value; a choice by its id."),
});

const GROUP_ROW = exactly("A row of the group.", {
  file: text("Survey file, as given, with forward slashes."),
  sheet: textOrNull("Sheet; null for CSV."),
  row: whole("Row as the spreadsheet program shows it; of CSV the line.", 1),
  point: textOrNull("The point as the survey names it."),
});

const DISAGREEMENT = exactly("A fact that the rows ought to state alike and do not.", {
  fact: form("Id of the fact.", FACT),
  values: listOf(
    "Each value that is stated.",
    exactly("A value that some rows state.", {
      value: text("In words."),
      rows: whole("How many rows state it.", 1),
      cells: listOf(
        "Cells of the first of them.",
        exactly("A cell of a survey file.", {
          file: text("Survey file."),
          sheet: textOrNull("Null for CSV."),
          cell: form("Such as F17.", CELL),
        }),
      ),
    }),
  ),
});

const GROUP = exactly("Rows that share a key, judged as a whole.", {
  id: text("Kind and key, such as supply: PSU 1; the same whatever the order of rows and files."),
  kind: form("Id of the group file of the rulebook.", KEBAB),
  title: text("What the rows have in common."),
  key: listOf("What the rows share; the site only where a row states it.", FACT_AND_VALUE),
  rows: listOf("All its rows in the order of files, sheets and rows.", defined("groupRow")),
  disagreements: listOf("What its rows contradict each other in.", defined("disagreement")),
  findings: listOf("What rules of groups say of it; counts in the verdict of every row.", defined("finding")),
});

/** Definitions that the groups of a document use. */
export const GROUP_PARTS = { group: GROUP, groupRow: GROUP_ROW, disagreement: DISAGREEMENT } as const;
