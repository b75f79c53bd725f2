import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { parseDocument } from "yaml";
import { foldText } from "../../src/base/index.js";
import {
  type CommonWords,
  type FieldWords,
  factOf,
  findFact,
  LANGUAGES,
  SURVEY_FACTS,
  type WordExample,
} from "../../src/facts/index.js";

const FOLDER = new URL("../../rules/words/", import.meta.url);

interface WordFile {
  readonly common?: CommonWords;
  readonly fields?: Readonly<Record<string, FieldWords>>;
}

const files = readdirSync(fileURLToPath(FOLDER))
  .filter((name) => name.endsWith(".yaml"))
  .sort()
  .map((name) => ({ name, document: parseDocument(readFileSync(new URL(name, FOLDER), "utf8")) }));
const contents = files.map(({ document }) => document.toJS() as WordFile);
const entries = contents.flatMap((file) => Object.entries(file.fields ?? {}));
const fields = new Map(entries);
const common = contents.map((file) => file.common).find((words) => words !== undefined);
const withChoices = entries.filter(([, words]) => words.choices !== undefined);

/** Letters and digits only, one blank between: what tells two headings or words apart when they are looked up. */
function keyOf(text: string): string {
  const words = foldText(text).match(/[\p{L}\d]+(?:[.,]\d+)*/gu);
  return words === null ? foldText(text) : words.join(" ");
}

function twice(texts: readonly string[], key: (text: string) => string): readonly string[] {
  const seen = new Set<string>();
  return texts.filter((text) => seen.has(key(text)) || !seen.add(key(text)));
}

/** Headings that may mean several fields, and why; the values of the column decide. */
const SHARED_HEADINGS: readonly {
  readonly fields: string;
  readonly why: string;
  readonly headings: readonly string[];
}[] = [
  {
    fields: "drive_type variable_speed",
    why: "a drive is a belt or a coupling to one surveyor, an inverter or direct starting to the next",
    headings: [
      "drive",
      "drive type",
      "type of drive",
      "antrieb",
      "antriebsart",
      "art des antriebs",
      "accionamiento",
      "tipo de accionamiento",
      "entrainement",
      "mode d entrainement",
      "type d entrainement",
    ],
  },
  {
    fields: "bearing_position bearing_type",
    why: "a column of bearings holds drive end and non-drive end, or ball and sleeve",
    headings: ["bearing", "lager", "cojinete", "rodamiento", "palier", "roulement"],
  },
  {
    fields: "direction shaft_orientation",
    why: "the orientation of the shaft or of the sensor; where all cells fit both, nothing is read",
    headings: ["orientation", "orientierung", "orientacion"],
  },
  { fields: "power supply_voltage", why: "75 kW is the motor, 24 V DC the supply", headings: ["power"] },
  {
    fields: "nominal_speed supply_voltage_min",
    why: "U/min is the unit of speed in German, U min the lowest voltage; signs are not told apart in headings",
    headings: ["u min"],
  },
];

describe("word files", () => {
  it.each(files.map(({ name, document }) => [name, document] as const))("%s parses", (_name, document) => {
    expect(document.errors).toEqual([]);
    expect(document.warnings).toEqual([]);
  });

  it("have words for every survey field, each in one file only", () => {
    const listed = entries.map(([id]) => id);
    expect(twice(listed, (id) => id)).toEqual([]);
    expect([...listed].sort()).toEqual(SURVEY_FACTS.map(({ id }) => id).sort());
  });

  it("have words for every choice of the catalogue and for no other", () => {
    for (const { id, kind, choices = [] } of SURVEY_FACTS) {
      const wanted = kind === "choice" ? choices.filter((choice) => choice !== "absent") : [];
      expect([id, ...Object.keys(fields.get(id)?.choices ?? {}).sort()]).toEqual([id, ...[...wanted].sort()]);
    }
  });
});

describe("headings", () => {
  it.each(entries)("of %s are told in all languages, none empty, none twice", (_id, { headings }) => {
    expect(Object.keys(headings).sort()).toEqual([...LANGUAGES].sort());
    for (const language of LANGUAGES) {
      const listed = headings[language] ?? [];
      expect(listed.length).toBeGreaterThanOrEqual(6);
      expect(listed.filter((heading) => typeof heading !== "string" || heading.trim() === "")).toEqual([]);
      expect(twice(listed, foldText)).toEqual([]);
    }
  });

  it("are shared between fields only where the values of a column can decide", () => {
    const owners = new Map<string, Set<string>>();
    for (const [id, { headings }] of entries) {
      for (const heading of LANGUAGES.flatMap((language) => headings[language] ?? [])) {
        const key = keyOf(heading);
        owners.set(key, (owners.get(key) ?? new Set()).add(id));
      }
    }
    const shared = [...owners]
      .filter(([, ids]) => ids.size > 1)
      .map(([key, ids]) => `${key}: ${[...ids].sort().join(" ")}`);
    const allowed = SHARED_HEADINGS.flatMap(({ headings, fields: ids }) =>
      headings.map((heading) => `${heading}: ${ids}`),
    );
    expect(shared.sort()).toEqual(allowed.sort());
  });
});

describe("choice words", () => {
  it.each(withChoices)("of %s are never empty and never twice in one choice", (_id, { choices = {} }) => {
    for (const words of Object.values(choices)) {
      expect(words.length).toBeGreaterThan(0);
      expect(words.filter((word) => typeof word !== "string" || word.trim() === "")).toEqual([]);
      expect(twice(words, foldText)).toEqual([]);
    }
  });

  it.each(withChoices)("of %s speak for one choice only", (_id, { choices = {} }) => {
    const owner = new Map<string, string>();
    for (const [choice, words] of Object.entries(choices)) {
      for (const word of words) {
        expect(`${word}: ${owner.get(keyOf(word)) ?? choice}`).toBe(`${word}: ${choice}`);
        owner.set(keyOf(word), choice);
      }
    }
  });
});

describe("examples", () => {
  it.each(withChoices)("of %s hold readings and refusals by choices of the catalogue", (id, { examples = [] }) => {
    const { choices = [] } = factOf(id);
    const values = examples.flatMap(({ expect: wanted }: WordExample) =>
      "value" in wanted ? [String(wanted.value)] : [],
    );
    expect(values.filter((value) => !choices.includes(value))).toEqual([]);
    expect(values.length).toBeGreaterThanOrEqual(3);
    const errors = examples.flatMap(({ expect: wanted }) => ("error" in wanted ? [wanted.error] : []));
    expect(errors).toContain("several-values");
    expect(errors).toContain("unknown-choice");
  });

  it("say nothing beyond a value, a range or an error", () => {
    const keys = new Set(
      entries.flatMap(([, { examples = [] }]) => examples.flatMap((example) => Object.keys(example.expect))),
    );
    const known = ["value", "unit", "error", "lowest", "highest", "accuracy", "remark", "kind"];
    expect([...keys].filter((key) => !known.includes(key))).toEqual([]);
  });
});

describe("common words", () => {
  it("stand in one file and hold every list", () => {
    expect(contents.filter((file) => file.common !== undefined)).toHaveLength(1);
    const { marks, ...lists } = common as CommonWords;
    for (const [name, words] of Object.entries(lists)) {
      expect([name, words.filter((word: string) => typeof word !== "string" || word === "")]).toEqual([name, []]);
      expect(words.length).toBeGreaterThan(0);
    }
    expect(Object.keys(marks).sort()).toEqual([...LANGUAGES].sort());
  });

  it("tell yes from no, and neither from missing", () => {
    const sets = [common?.yes, common?.no, common?.missing].map((words) => new Set((words ?? []).map(foldText)));
    const all = sets.flatMap((set) => [...set]);
    expect(twice(all, (word) => word)).toEqual([]);
  });

  it("have no mark of a language that another language shares", () => {
    const all = LANGUAGES.flatMap((language) => common?.marks[language] ?? []);
    expect(twice(all, foldText)).toEqual([]);
    expect(twice(all, keyOf)).toEqual([]);
  });

  it("belong to facts that the catalogue has", () => {
    expect(entries.map(([id]) => findFact(id)?.source).filter((source) => source !== "survey")).toEqual([]);
  });
});
