import { dimensionInWords, formatNumber } from "../../base/index.js";
import { accuracyInWords, factName, findFact, plainWords, stateInWords } from "../../facts/index.js";
import {
  inForce,
  type SensorModel,
  type TableRow,
  type ValueTable,
  type WayOfMeasuring,
} from "../../rulebook/index.js";
import { conditionInWords } from "../../screening/index.js";
import { type Block, entry, idOf, type Line, list, type Row, text } from "./block.js";
import { type BookShown, byText, datesInWords } from "./book-shown.js";
import { factLink, factLinks } from "./fact-words.js";
import { siteBlocks, siteLines } from "./site-words.js";
import { sourceList, sourcesNamed } from "./sources.js";

/** Annex B: the sensor models with their dated values. */
export function modelsPart(book: BookShown): readonly Block[] {
  const { models, baselineModel } = book.rulebook;
  return [
    { is: "heading", level: 2, id: "annex-models", line: ["Annex B: sensor models"] },
    text(
      `A survey that names no model is judged by the model ${baselineModel}. What a model does not state is not known for its points.`,
    ),
    ...[...models.values()].flatMap((model) => modelBlocks(model, book)),
  ];
}

function modelBlocks(model: SensorModel, book: BookShown): readonly Block[] {
  const rows = [...model.facts].flatMap(([id, values]) =>
    values.map(
      (value): Row => ({
        cells: [
          [factLink(id, book)],
          [stateInWords(id, value.state)],
          [`${datesInWords(value, book.asOf)}${sourcesNamed(value.cites, model.citations)}`],
        ],
      }),
    ),
  );
  const written = model.alsoWritten.length === 0 ? "" : ` Surveys also write: ${model.alsoWritten.join(", ")}.`;
  const invented = model.forExamplesOnly ? " Invented, for examples only; it is never proposed." : "";
  return [
    { is: "heading", level: 3, id: idOf.model(model.id), line: [capital(model.title)] },
    text("Model ", { code: model.id }, `.${invented}${written}`),
    { is: "table", caption: `Values of the model ${model.id}`, headings: ["fact", "value", "holds"], rows },
    ...siteBlocks("model", model.id, book),
    text("Sources:"),
    ...sourceList(model.citations),
  ];
}

/** Annex C: the tables that rules and formulas look up. */
export function tablesPart(book: BookShown): readonly Block[] {
  const tables = [...book.rulebook.tables.values()].filter(({ gives }) => gives.some((id) => book.hasFact(id)));
  return [
    { is: "heading", level: 2, id: "annex-tables", line: ["Annex C: tables"] },
    text(
      "What varies by source or by what is chosen. Where a survey leaves open which row is meant, every row that is still " +
        "possible counts. A dash stands where nobody has a value.",
    ),
    ...tables.flatMap((table) => tableBlocks(table, book)),
  ];
}

function tableBlocks(table: ValueTable, book: BookShown): readonly Block[] {
  const { id, title, by, gives, entries, citations } = table;
  const lookedUp: Line = by.length === 0 ? ["It holds everywhere."] : ["Looked up by ", ...factLinks(by, book), "."];
  return [
    { is: "heading", level: 3, id: idOf.table(id), line: [capital(title)] },
    text("Table ", { code: id }, ". ", ...lookedUp),
    ...entries.flatMap((one, index): readonly Block[] => [
      {
        is: "table",
        caption: `${title}${entries.length > 1 ? `, entry ${index + 1}` : ""}: ${datesInWords(one, book.asOf)}${sourcesNamed(one.cites, citations)}`,
        headings: [...(by.length === 0 ? ["for"] : by.map(factName)), ...gives.map(headingOf)],
        rows: one.rows.map((row): Row => ({ cells: rowCells(row, gives) })),
      },
    ]),
    ...siteBlocks("table", id, book),
    text("Sources:"),
    ...sourceList(citations),
  ];
}

/** The name of a fact with its unit, above numbers that are written without it. */
function headingOf(id: string): string {
  const unit = findFact(id)?.unit;
  return unit === undefined ? factName(id) : `${factName(id)}, ${unit}`;
}

function rowCells({ keys, values }: TableRow, gives: readonly string[]): readonly Line[] {
  const named = keys.map((key): Line => [typeof key === "boolean" ? (key ? "yes" : "no") : plainWords(key)]);
  const given = gives.map((id): Line => {
    const value = values.get(id) ?? null;
    if (value === null) return ["–"];
    if (typeof value === "object" && value.lowest === value.highest) return [formatNumber(value.lowest)];
    return [stateInWords(id, { known: true, value, origin: { kind: "none" } })];
  });
  return [...(named.length === 0 ? [["everything"]] : named), ...given];
}

/** Annex D: the groups of points. */
export function groupsPart(book: BookShown): readonly Block[] {
  const groups = [...book.rulebook.groups.values()].filter(
    ({ id, members }) =>
      book.rules.some(({ group }) => group === id) || [...members.keys()].some((fact) => book.used.has(fact)),
  );
  if (groups.length === 0) return [];
  return [
    { is: "heading", level: 2, id: "annex-groups", line: ["Annex D: groups of points"] },
    text(
      "Points of one site that share the key are judged together. A point whose key is not known is counted in no group; the " +
        "rules on that group are undecided for it.",
    ),
    ...groups.flatMap(({ id, title, key, members }): readonly Block[] => [
      { is: "heading", level: 3, id: idOf.group(id), line: [capital(title)] },
      text("Group ", { code: id }, "."),
      ...siteBlocks("group", id, book),
      {
        is: "entries",
        entries: [
          entry("Key", ...factLinks(key, book)),
          {
            label: "Gathered",
            blocks: list(
              [...members].map(([fact, { is, fact: of, where }]): Line => {
                const what: Line = of === null ? [] : [" of ", factLink(of, book)];
                const which = where === null ? "" : `, of the points where ${conditionInWords(where, book.rulebook)}`;
                return [factLink(fact, book), `: ${GATHERED[is]}`, ...what, which];
              }),
            ),
          },
        ],
      },
    ]),
  ];
}

const GATHERED = {
  sum: "the sum",
  minimum: "the least",
  maximum: "the greatest",
  distinct: "the number of different values",
  same: "what the points state alike",
  count: "the number of points",
} as const;

/** Annex E: ways of measuring and how accurate they are. */
export function measuringPart(book: BookShown): readonly Block[] {
  const ways = [...book.rulebook.ways.values()].sort((a, b) => byText(a.title, b.title));
  if (ways.length === 0) return [];
  return [
    { is: "heading", level: 2, id: "annex-measuring", line: ["Annex E: ways of measuring"] },
    text(
      "A survey, a column file or a site file may say how numbers were measured. They then count with the accuracy of that way, " +
        "to both sides.",
    ),
    {
      is: "table",
      caption: `Ways of measuring and their accuracies on ${book.asOf}`,
      headings: ["way", "measures", "accuracy", "source"],
      rows: ways.map((way): Row => ({ id: idOf.way(way.id), cells: wayCells(way, book) })),
    },
  ];
}

function wayCells({ id, title, only, accuracies, citations }: WayOfMeasuring, book: BookShown): readonly Line[] {
  const now = [...accuracies].map(
    ([dimension, dated]) => [dimension, dated.find((one) => inForce(one, book.asOf))] as const,
  );
  const measures: Line =
    only === null ? [now.map(([dimension]) => dimensionInWords(dimension)).join(", ")] : factLinks(only, book);
  const accuracy = now.map(([dimension, one]) => {
    const words = one === undefined ? "none in force" : accuracyInWords(one, one.unit);
    return now.length > 1 ? `${dimensionInWords(dimension)} ${words}` : words;
  });
  const sources = [...citations.values()].map(({ basis, source, says }) => {
    return `${plainWords(basis)}${source === undefined ? "" : `, ${source}`}: ${says}`;
  });
  return [[title], measures, [accuracy.join("; ")], [[...sources, ...siteLines("measuring", id, book)].join("; ")]];
}

function capital(title: string): string {
  return title.charAt(0).toUpperCase() + title.slice(1);
}
