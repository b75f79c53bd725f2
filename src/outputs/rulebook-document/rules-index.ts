import type { TextPlace } from "../../base/index.js";
import { factName } from "../../facts/index.js";
import type { Rulebook } from "../../rulebook/index.js";
import { CAUTIONS } from "../../screening/index.js";
import { countOf } from "../wording/numbers.js";
import { type Block, type Line, list, type Row, text } from "./block.js";
import { topicsOf } from "./book-shown.js";
import { limitsInLine } from "./limit-words.js";
import { markdownBlocks } from "./markdown-document.js";
import { inWords } from "./rule-part.js";

/**
 * The list of a rulebook's files for its own folder, as Markdown: every rule with what it demands and its limits, leading
 * to its file. It says nothing that hangs on a day, so that it is stale only where the rulebook changed.
 */
export function rulesIndex(rulebook: Rulebook): string {
  const { name, version, rules, sets, defaultSet } = rulebook;
  const inSets = sets.map((set) => `${set} ${rules.filter((rule) => rule.sets.includes(set)).length}`);
  const blocks: readonly Block[] = [
    { is: "heading", level: 1, id: "", line: [`${name} ${version}`] },
    text(
      `${countOf(rules.length, "rule")} by which points for permanently mounted vibration sensors are screened; by set: ` +
        `${inSets.join(", ")}. Where nothing else is asked for, the set ${defaultSet} is applied. Sources, cases and messages stand ` +
        "in the files. ",
      { strong: CAUTIONS[0] ?? "" },
    ),
    text(
      "This list is written from the files, not by hand: ",
      { code: "spotface write-rulebook FOLDER --index FOLDER/README.md --overwrite" },
      ". The whole as a standard to read and print: ",
      { code: "spotface write-rulebook FOLDER --html rulebook.html" },
      ".",
    ),
    ...topicsOf(rules).flatMap(({ name: topic, rules: own }): readonly Block[] => [
      { is: "heading", level: 2, id: "", line: [`Rules on ${topic}`] },
      {
        is: "table",
        caption: "",
        headings: ["rule", "demands", "limits", "sets", "stages"],
        rows: own.map((rule): Row => {
          const never = rule.releases === null ? "" : "; no deviation is accepted";
          return {
            cells: [
              [fileOf(rule.at, rule.id)],
              [rule.title],
              [`${limitsInLine(rule, rulebook)}${never}`],
              [inWords(rule.sets)],
              [inWords(rule.stages)],
            ],
          };
        }),
      },
    ]),
    ...dataLists(rulebook),
  ];
  return markdownBlocks(blocks);
}

function dataLists({ models, tables, groups, ways }: Rulebook): readonly Block[] {
  const part = (title: string, items: readonly Line[]): readonly Block[] =>
    items.length === 0 ? [] : [{ is: "heading", level: 2, id: "", line: [title] }, ...list(items)];
  const titles = inWords([...ways.values()].map(({ title }) => title));
  return [
    ...part(
      "Sensor models",
      [...models.values()].map(({ id, title, at }): Line => [fileOf(at, id), `: ${title}`]),
    ),
    ...part(
      "Tables",
      [...tables.values()].map(({ id, title, by, at }): Line => {
        const lookedUp = by.length === 0 ? "" : `, by ${inWords(by.map(factName))}`;
        return [fileOf(at, id), `: ${title}${lookedUp}`];
      }),
    ),
    ...part(
      "Groups of points",
      [...groups.values()].map(({ id, title, at }): Line => [fileOf(at, id), `: ${title}`]),
    ),
    ...part("Ways of measuring", ways.size === 0 ? [] : [[`${titles}: in the folder `, MEASURING]]),
  ];
}

const MEASURING = { file: "measuring", path: "measuring" };

/** A file of the rulebook by its place in the folder: topic and name. */
function fileOf({ file }: TextPlace, id: string): Line[number] {
  return { file: id, path: file.split("/").slice(-2).join("/") };
}
