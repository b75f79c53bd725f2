import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { foldText } from "../../src/base/index.js";
import { factOf, isNumeric, type Locale, SURVEY_FACTS } from "../../src/facts/index.js";
import type { CellReading } from "../../src/records/cells/cell-reading.js";
import { readExample } from "../tools/read-example.js";
import { shippedRulebook } from "../tools/shipped.js";
import { plainFact, surveyOfCsv } from "../tools/survey-of.js";

const { words } = await shippedRulebook();
const LOCALES: readonly (Locale | null)[] = ["en", "de", "es", "fr", "de-CH", "es-MX", null];

/** A heading that names the field and no other. */
function headingOf(field: string): string {
  const lists = Object.values(words.fields.get(field)?.headings ?? {}).flat();
  const own = lists.find((heading) => read(field, heading, "x", null) !== null);
  if (own === undefined) throw new Error(`no heading for ${field}`);
  return own;
}

function read(
  field: string,
  heading: string,
  cell: string | number | boolean,
  locale: Locale | null,
): CellReading | null {
  const reading = readExample(field, { heading, cell, locale, expect: {} }, words);
  return reading === "heading not matched" ? null : reading;
}

const FIELDS = [...words.fields.keys()];
const field = fc.constantFrom(...FIELDS);
const locale = fc.constantFrom(...LOCALES);
const headings = new Map(FIELDS.map((id) => [id, headingOf(id)]));
const readAs = (id: string, cell: string | number | boolean, of: Locale | null): CellReading => {
  const reading = read(id, headings.get(id) ?? "", cell, of);
  if (reading === null) throw new Error(`heading of ${id} not matched`);
  return reading;
};

/** Scraps that surveys are made of, glued together at random. */
const scrap = fc.constantFrom(
  ..."0 1 15 1.485 1,485 24 V DC AC CA mm in \" ' rpm U/min Hz Nm ft-lb °C % ± +/- - – .. … to bis a ca. ~ max min ( ) [ ] / x * ? < > = not nicht sin pas no yes ja oui DE NDE H steel painted lackiert tbc k.A. M6 1/4 #N/A ½ ² é ß ﬁ １".split(
    " ",
  ),
  " ",
  "\u00a0",
  "\u202f",
  "\u200b",
  "\n",
  "\ud800",
  "😀",
);
const anyText = fc.oneof(
  fc.string({ unit: "binary", maxLength: 60 }),
  fc.array(scrap, { maxLength: 12 }).map((parts) => parts.join("")),
  fc.array(scrap, { maxLength: 8 }).map((parts) => parts.join(" ")),
);

/** A reading is an error of the closed list, or a value of the field's kind within what can be meant. */
function expectSound(id: string, reading: CellReading): void {
  const definition = factOf(id);
  if (!reading.ok) {
    expect(reading.code).toMatch(/^[a-z-]+$/);
    expect(reading.text).not.toBe("");
    return;
  }
  expect(reading.kind).toBe(isNumeric(definition) ? "number" : "word");
  if (reading.kind === "number") {
    const { lowest, highest } = reading.interval;
    expect(Number.isFinite(lowest) && Number.isFinite(highest) && lowest <= highest).toBe(true);
    const { lowest: least, highest: most } = definition.plausible ?? { lowest: -Infinity, highest: Infinity };
    const middle = reading.accuracy === null ? [lowest, highest] : [highest - reading.accuracy];
    for (const value of middle) expect(value >= least * (1 - 1e-9) - 1e-9 && value <= most * (1 + 1e-9)).toBe(true);
  } else if (definition.kind === "choice") expect(definition.choices).toContain(reading.value);
  else expect(typeof reading.value).toBe(definition.kind === "yes-no" ? "boolean" : "string");
  if (definition.kind === "date" && reading.kind === "word") expect(reading.value).toMatch(/^\d{4}-\d{2}-\d{2}$/);
}

describe("any cell of any field", () => {
  it("knows every survey field", () => {
    expect(FIELDS.sort()).toEqual(SURVEY_FACTS.map(({ id }) => id).sort());
  });

  it("gives a sound value or an error, and never throws", () => {
    fc.assert(
      fc.property(field, anyText, locale, (id, cell, of) => expectSound(id, readAs(id, cell, of))),
      { numRuns: 6_000 },
    );
    fc.assert(
      fc.property(field, fc.oneof(fc.double(), fc.integer(), fc.boolean()), locale, (id, cell, of) =>
        expectSound(id, readAs(id, cell, of)),
      ),
      { numRuns: 2_000 },
    );
  });

  it("gives no value for a word that means missing, unless it is listed as a choice", () => {
    for (const id of FIELDS) {
      const choices = Object.values(words.fields.get(id)?.choices ?? {})
        .flat()
        .map(foldText);
      for (const word of words.common.missing) {
        if (choices.includes(foldText(word))) continue;
        for (const cell of [
          word,
          ` ${word} `,
          word.toUpperCase(),
          word.toLowerCase(),
          word.replaceAll(" ", "\u00a0 "),
        ]) {
          expect([id, cell, readAs(id, cell, null)]).toMatchObject([id, cell, { ok: false, code: "missing" }]);
        }
      }
    }
  });
});

/** The digits of a number in one way of writing. */
interface Writing {
  readonly group: string;
  readonly decimal: "." | ",";
  readonly locale: Locale;
}
const WRITINGS: readonly Writing[] = [
  { group: ",", decimal: ".", locale: "en" },
  { group: "", decimal: ".", locale: "en" },
  { group: " ", decimal: ".", locale: "en" },
  { group: ",", decimal: ".", locale: "es-MX" },
  { group: ".", decimal: ",", locale: "de" },
  { group: "", decimal: ",", locale: "de" },
  { group: "\u202f", decimal: ",", locale: "fr" },
  { group: "\u00a0", decimal: ",", locale: "fr" },
  { group: "’", decimal: ".", locale: "de-CH" },
  { group: "'", decimal: ".", locale: "de-CH" },
  { group: ".", decimal: ",", locale: "es" },
];

function written(thousandths: number, digits: number, { group, decimal }: Writing): string {
  const [whole = "", part = ""] = (thousandths / 1000).toFixed(digits).split(".");
  const grouped = whole.replace(/\B(?=(?:\d{3})+$)/g, group);
  return part === "" ? grouped : `${grouped}${decimal}${part}`;
}

describe("numbers as people write them", () => {
  const before = fc.constantFrom("", "ca. ", "~", "≈ ", "approx. ", "env. ", "n = ");
  const behind = fc.constantFrom("", " rpm", "rpm", " U/min", " 1/min", " r.p.m.", " tr/min", " (nameplate)");

  it("read back equal in their language, and never as another number without one", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1_000, max: 59_999_999 }),
        fc.integer({ min: 0, max: 3 }),
        fc.constantFrom(...WRITINGS),
        before,
        behind,
        (thousandths, digits, writing, ahead, after) => {
          const number = Number((thousandths / 1000).toFixed(digits));
          // A Swiss 1.485 is read like a German one; only a grouping apostrophe or other digits tell it apart.
          const swiss = writing.locale === "de-CH" && digits === 3 && number < 1000;
          const cell = `${ahead}${written(thousandths, digits, writing)}${after}`;
          if (!swiss) expect(plainRead(readAs("nominal_speed", cell, writing.locale))).toBe(number);
          const open = readAs("nominal_speed", cell, null);
          if (open.ok) expect(plainRead(open)).toBe(number);
          else expect(open.code).toBe("ambiguous-number");
        },
      ),
      { numRuns: 3_000 },
    );
  });

  it("keep their tolerance, their sign and their unit", () => {
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 500 }), fc.integer({ min: 1, max: 9 }), (tenths, width) => {
        const cell = `${tenths / 10} ± ${width / 10} mm`;
        const reading = readAs("thread_depth", cell, "en");
        if (!reading.ok || reading.kind !== "number") throw new Error(`${cell} is not read`);
        expect(reading.accuracy).toBeCloseTo(width / 10, 9);
        expect((reading.interval.lowest + reading.interval.highest) / 2).toBeCloseTo(tenths / 10, 9);
      }),
    );
  });
});

function plainRead(reading: CellReading): unknown {
  return reading.ok && reading.kind === "number" && reading.interval.lowest === reading.interval.highest
    ? reading.interval.lowest
    : reading;
}

const blank = fc.constantFrom(" ", "  ", "\u00a0", "\n", "\u202f");

describe("words of the lists", () => {
  const listed = FIELDS.flatMap((id) =>
    Object.entries(words.fields.get(id)?.choices ?? {}).flatMap(([choice, texts]) =>
      texts.map((text) => ({ id, choice, text })),
    ),
  );

  it("are read as their choice whatever the case, the accents and the blanks", () => {
    // Of words listed twice in one field the first counts.
    const first = new Map<string, string>();
    for (const { id, choice, text } of listed) {
      const key = `${id} ${foldText(text)}`;
      if (!first.has(key)) first.set(key, choice);
    }
    fc.assert(
      fc.property(
        fc.constantFrom(...listed),
        fc.constantFrom<(text: string) => string>(
          (text) => text.toUpperCase(),
          (text) => text.toLowerCase(),
          (text) => text.normalize("NFD"),
          (text) => text.normalize("NFD").replace(/\p{Mn}/gu, ""),
          (text) => text,
        ),
        blank,
        ({ id, text }, change, gap) => {
          const cell = `${gap}${change(text).replaceAll(" ", gap)}${gap}`;
          expect([cell, readAs(id, cell, null)]).toMatchObject([
            cell,
            { ok: true, value: first.get(`${id} ${foldText(text)}`) },
          ]);
        },
      ),
      { numRuns: 4_000 },
    );
  });

  const errors = FIELDS.flatMap((id) =>
    (words.fields.get(id)?.examples ?? [])
      .filter(({ expect: wanted, cell }) => "error" in wanted && typeof cell === "string")
      .map((example) => ({ id, ...example, cell: String(example.cell) })),
  );

  it("whose examples are errors stay errors whatever the case and the blanks", () => {
    fc.assert(
      fc.property(fc.constantFrom(...errors), fc.boolean(), blank, ({ id, heading, cell, locale: of }, upper, gap) => {
        // In a unit capitals may carry meaning, and identity texts keep their line breaks.
        const changed = upper && !isNumeric(factOf(id)) ? cell.toUpperCase() : cell;
        const spaced = factOf(id).kind === "identifier" ? changed : ` ${changed.replaceAll(" ", gap)} `;
        expect([spaced, read(id, heading, spaced, of)?.ok]).toEqual([spaced, false]);
      }),
      { numRuns: 2_000 },
    );
  });
});

describe("a whole survey", () => {
  const table: readonly (readonly string[])[] = [
    ["Point", "Machine", "Speed", "Drive", "Mounting", "Surface", "Hole depth (mm)", "Supply", "Position"],
    ["P1", "Pump 1", "1485 rpm", "DOL", "tapped", "cast iron, painted", "18", "24 V DC", "DE H"],
    ["P2", "Fan 2", "900-1500", "VFD", "glued", "not painted", "1.485", "24 V", "NDE V"],
    ["P3", "Mill 3", "tbc", "", "stud or glue", "fan cowl", "15 ± 0.5", "230 V AC", "3"],
  ];

  async function factsOf(lines: readonly (readonly string[])[]): Promise<unknown> {
    const survey = await surveyOfCsv(lines.map((cells) => cells.map((cell) => `"${cell}"`).join(",")).join("\n"));
    return Object.fromEntries(
      survey.records.map((record) => [
        plainFact(record.facts.get("point_id")),
        Object.fromEntries(
          [...record.facts].sort(([a], [b]) => (a < b ? -1 : 1)).map(([id, state]) => [id, plainFact(state)]),
        ),
      ]),
    );
  }

  it("says the same with its columns shuffled, unknown columns added and blank rows between", async () => {
    const wanted = await factsOf(table);
    await fc.assert(
      fc.asyncProperty(
        fc.shuffledSubarray([...Array(9).keys()], { minLength: 9, maxLength: 9 }),
        fc.integer({ min: 0, max: 9 }),
        fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 4, maxLength: 4 }),
        async (order, at, gaps) => {
          const lines = table.flatMap((cells, row) => {
            const shuffled: string[] = order.map((column) => cells[column] ?? "");
            shuffled.splice(at, 0, row === 0 ? "Qqxyz" : `zzq ${row}`);
            const empty = shuffled.map(() => "");
            return [shuffled, ...Array.from({ length: gaps[row] ?? 0 }, () => empty)];
          });
          expect(await factsOf(lines)).toEqual(wanted);
        },
      ),
      { numRuns: 25 },
    );
  });
});
