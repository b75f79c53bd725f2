import { CATALOGUE, type FactDefinition, plainWords } from "../../facts/index.js";
import { type Block, idOf, type Line, type Row, type Table, text } from "./block.js";
import type { BookShown } from "./book-shown.js";
import { factLinks, plausibleInWords, valuesInWords } from "./fact-words.js";
import { definitionsUsed } from "./facts-used.js";

/** Annex A: every fact that the rules rest on, with what its values are and where it comes from. */
export function factsPart(book: BookShown): readonly Block[] {
  const facts = definitionsUsed(CATALOGUE, book.used);
  const from = (source: FactDefinition["source"]): readonly FactDefinition[] =>
    facts.filter((fact) => fact.source === source);
  return [
    { is: "heading", level: 2, id: "annex-facts", line: ["Annex A: facts"] },
    text(
      "The id is what rule files call the fact. “Possible” is the range of what can be meant at all: a number outside it is " +
        "taken for a slip of the pen and is not known.",
    ),
    ...section("survey-facts", "A.1 Facts of a survey", null, surveyTables(from("survey"))),
    ...section(
      "computed-facts",
      "A.2 Computed facts",
      "Computed from the facts named, with their accuracies; what is not known there leaves them not known.",
      [
        table(
          "Computed facts",
          ["fact", "values", "how it is computed", "source of the formula"],
          from("derived"),
          (fact) => [
            [valuesInWords(fact)],
            [...formulaOf(fact), "From: ", ...factLinks(fact.needs ?? [], book)],
            [fact.formulaSource ?? ""],
          ],
        ),
      ],
    ),
    ...section("model-facts", "A.3 Facts of sensor models", "Their values stand in annex B.", [
      table("Facts of sensor models", ["fact", "values", "possible"], from("model"), plainCells),
    ]),
    ...section("table-facts", "A.4 Facts looked up in tables", "Their values stand in annex C.", [
      table("Facts looked up in tables", ["fact", "values", "looked up by"], from("table"), (fact) => [
        [valuesInWords(fact)],
        (fact.needs ?? []).length === 0 ? ["holds everywhere"] : factLinks(fact.needs ?? [], book),
      ]),
    ]),
    ...section(
      "group-facts",
      "A.5 Facts of groups and of the run",
      "How groups are formed and what is gathered stands in annex D.",
      [
        table(
          "Facts of groups and of the run",
          ["fact", "values", "possible"],
          [...from("group"), ...from("run")],
          plainCells,
        ),
      ],
    ),
  ];
}

/** A part with its tables; without any row it is left out. */
function section(id: string, title: string, remark: string | null, tables: readonly Table[]): readonly Block[] {
  if (tables.every(({ rows }) => rows.length === 0)) return [];
  const heading: Block = { is: "heading", level: 3, id, line: [title] };
  return [heading, ...(remark === null ? [] : [text(remark)]), ...tables];
}

function surveyTables(facts: readonly FactDefinition[]): readonly Table[] {
  const parts = [...new Set(facts.map(({ group }) => group))];
  return parts.map((part) => {
    const own = facts.filter(({ group }) => group === part);
    return table(`Survey: ${plainWords(part)}`, ["fact", "values", "possible"], own, plainCells);
  });
}

function plainCells(fact: FactDefinition): readonly Line[] {
  return [[valuesInWords(fact)], [plausibleInWords(fact)]];
}

function table(
  caption: string,
  headings: readonly string[],
  facts: readonly FactDefinition[],
  cells: (fact: FactDefinition) => readonly Line[],
): Table {
  const rows = facts.map((fact): Row => ({ id: idOf.fact(fact.id), cells: [nameOf(fact), ...cells(fact)] }));
  const kind = headings.length > 3 ? "computed" : "facts";
  return { is: "table", kind, caption, headings, rows };
}

function nameOf({ id, name }: FactDefinition): Line {
  return [name, " ", { code: id }];
}

function formulaOf({ formula }: FactDefinition): Line {
  return formula === undefined ? [] : [`${formula}. `];
}
