import { describe, expect, it } from "vitest";
import { fill, pointsMapping, written } from "./made-mapping.js";

/** One point; its notes and tag are what the tests are about. */
function surveyOf(values: Readonly<Record<string, string>>): string {
  const quoted = Object.values(values).map((value) => `"${value.replaceAll('"', '""')}"`);
  return `Point ID;${Object.keys(values).join(";")}\nP-1;${quoted.join(";")}\n`;
}

/** What a column writes of a tag, below its heading. */
async function ofTag(column: object, tag: string, form: object = {}): Promise<unknown> {
  const mapping = pointsMapping([{ heading: "T", fact: "asset_tag", ...column }], {}, { form });
  const result = await written(mapping, surveyOf({ "Asset tag": tag }));
  return typeof result === "string" ? result.replace(/^T\r\n/, "") : result;
}

/** What a column writes of a hole depth. */
async function ofDepth(column: object, depth: string, form: object = {}): Promise<unknown> {
  const mapping = pointsMapping([{ heading: "T", fact: "hole_depth", type: "number", ...column }], {}, { form });
  const result = await written(mapping, surveyOf({ "Hole depth (mm)": depth }));
  return typeof result === "string" ? result.replace(/^T\r\n/, "") : result;
}

const CODE = { type: "code" };

describe("a text", () => {
  it("that looks like a formula has an apostrophe in front, which counts in its length", async () => {
    expect(await ofTag({}, "=U1+H2")).toBe("'=U1+H2\r\n");
    const length = { most: 6, counted: "characters", tooLong: "shorten" };
    expect(await ofTag({ length }, "=ABCDE")).toBe("'=ABC…\r\n");
    expect(await ofTag({ length: { ...length, tooLong: "stop" } }, "=ABCDE")).toEqual(["T: too-long"]);
    expect(await ofTag({ length }, "ABCDEF")).toBe("ABCDEF\r\n");
  });

  it("is one line unless it may have many", async () => {
    const template = { fact: undefined, template: "{asset_tag}\n {machine_name}" };
    const survey = surveyOf({ "Asset tag": "P-1", Machine: "Mill 2" });
    expect(await written(pointsMapping([{ heading: "T", ...template }]), survey)).toBe("T\r\nP-1 Mill 2\r\n");
    const many = pointsMapping([{ heading: "T", ...template, lines: "many" }]);
    expect(await written(many, survey)).toBe('T\r\n"P-1\n Mill 2"\r\n');
  });

  it("is not written where it would be the word that clears the field", async () => {
    expect(await ofTag({ whenEmpty: { clear: "CLEAR" } }, "CLEAR")).toEqual(["T: clear-word"]);
  });
});

describe("a code", () => {
  it.each(["=U1+H2-P1101", "+H2", "-P1", "00123", "p-1101", "1E5"])("%s is written unchanged", async (tag) => {
    expect(await ofTag(CODE, tag)).toBe(`${tag}\r\n`);
  });

  it.each(["=A1+b", "=cmd", "-x", "+a1"])("%s is refused, never neutralised", async (tag) => {
    expect(await ofTag(CODE, tag)).toEqual(["T: formula"]);
  });

  it("that is a number keeps its point, whatever the decimal sign of the file", async () => {
    expect(await ofDepth(CODE, "14.9", { decimalSign: "comma", separator: "semicolon" })).toBe("14.9\r\n");
  });

  it("is held to its characters, and never cut", async () => {
    const characters = ["upper", "digits", "-"];
    expect(await ofTag({ ...CODE, characters }, "P-1101")).toBe("P-1101\r\n");
    expect(await ofTag({ ...CODE, characters }, "p-1101")).toEqual(["T: character"]);
    expect(await ofTag({ ...CODE, characters }, "P 1101")).toEqual(["T: character"]);
    expect(await ofTag({ ...CODE, characters: [...characters, "blank"] }, "P 1101")).toBe("P 1101\r\n");
    const length = { most: 5, counted: "characters", tooLong: "stop" };
    expect(await ofTag({ ...CODE, length }, "P-1101")).toEqual(["T: too-long"]);
  });

  it("with a sign in front is remarked on once, and not in a workbook", async () => {
    const column = { heading: "T", fact: "asset_tag", type: "code" };
    const survey = "Point ID;Asset tag\nP-1;=A1\nP-2;-B2\nP-3;C3\n";
    const { remarks } = await fill(pointsMapping([column]), survey);
    expect(remarks).toMatchObject([{ target: "points", column: "T", of: "2 of 3 codes" }]);
    expect((await fill(pointsMapping([column], { file: "points.xlsx" }), survey)).remarks).toEqual([]);
  });

  it("of yes and no goes through its list", async () => {
    const column = {
      heading: "T",
      fact: "has_standby",
      type: "code",
      values: { yes: "1", no: "0" },
      otherwise: "stop",
    };
    expect(await written(pointsMapping([column]), surveyOf({ "Standby machine": "yes" }))).toBe("T\r\n1\r\n");
  });
});

describe("a list of values", () => {
  const column = { heading: "V", field: "severity", values: { pass: "1", warn: "2", fail: "3" }, otherwise: "stop" };

  it("that lacks a word stops, and leaves nothing blank", async () => {
    const survey = surveyOf({ Machine: "Mill", "Lowest speed (r/min)": "?" });
    expect(await written(pointsMapping([column]), survey)).toEqual(["V: not-in-list"]);
    const whole = { ...column, values: { ...column.values, undecided: "4" } };
    expect(await written(pointsMapping([whole]), survey)).toBe("V\r\n4\r\n");
  });
});

describe("a character that the encoding does not have", () => {
  it("is refused by place, and never becomes a question mark", async () => {
    const form = { encoding: "windows-1252" };
    const survey = surveyOf({ "Asset tag": "Ω-1", Machine: "Pompa zasilająca" });
    const columns = [
      { heading: "T", fact: "asset_tag", type: "code" },
      { heading: "M", fact: "machine_name" },
    ];
    expect(await written(pointsMapping(columns, {}, { form }), survey)).toEqual([
      "T: not-in-encoding",
      "M: not-in-encoding",
    ]);
    const { problems } = await fill(pointsMapping(columns, {}, { form }), survey);
    expect(problems[1]).toMatchObject({ target: "points", column: "M", of: "P-1 (survey.csv, line 2)" });
    expect(problems[1]?.text).toBe(
      '"Pompa zasilająca" holds "ą", which windows-1252 does not have; mend it, or write the file in utf-8',
    );
  });

  it("may be a letter with a separate accent, which is put together in a text", async () => {
    const form = { encoding: "windows-1252" };
    const mapping = pointsMapping([{ heading: "M", fact: "machine_name" }], {}, { form });
    const filling = await fill(mapping, surveyOf({ Machine: "Mu\u0308hle" }));
    expect(filling.problems).toEqual([]);
    expect(filling.targets[0]?.mapped.rows[0]?.values).toEqual(["M\u00fchle"]);
  });
});

describe("a number", () => {
  it("has the decimal sign of the file, and no grouping", async () => {
    expect(await ofDepth({}, "25.75")).toBe("25.75\r\n");
    expect(await ofDepth({}, "14.9", { decimalSign: "comma", separator: "semicolon" })).toBe("14,9\r\n");
    expect(await ofDepth({}, "14.9", { decimalSign: "comma" })).toBe('"14,9"\r\n');
    expect(await ofDepth({ unit: "cm" }, "14.9")).toBe("1.49\r\n");
  });

  it("that is known within bounds is written only where the mapping says which end", async () => {
    expect(await ofDepth({}, "15.3 ± 0.5")).toBe("15.3\r\n");
    expect(await ofDepth({ takes: "lowest" }, "15.3 ± 0.5")).toBe("14.8\r\n");
    const mapping = (takes: string): string =>
      pointsMapping([{ heading: "T", fact: "lowest_running_speed", type: "number", takes }]);
    // A single speed under a variable drive is an upper bound.
    const survey = surveyOf({ "Nominal speed (r/min)": "1480", "Variable speed": "yes" });
    expect(await written(mapping("highest"), survey)).toBe("T\r\n1480\r\n");
    expect(await written(mapping("value"), survey)).toEqual(["T: no-single-number"]);
    expect(await written(mapping("lowest"), survey)).toEqual(["T: no-single-number"]);
  });

  it("that is rounded is remarked on", async () => {
    const mapping = pointsMapping([{ heading: "T", fact: "hole_depth", type: "number", decimals: 1 }]);
    const filling = await fill(mapping, "Point ID;Hole depth (mm)\nP-1;14.96\nP-2;15.5\n");
    expect(filling.targets[0]?.mapped.rows.map(({ values }) => values[0]).toSorted()).toEqual(["15.0", "15.5"]);
    expect(filling.remarks.map(({ text }) => text)).toEqual(["rounded from 14.96 to 15.0"]);
  });

  it("of a code is one single value, too", async () => {
    const column = { type: "code", fact: "lowest_running_speed" };
    const survey = surveyOf({ "Nominal speed (r/min)": "1480", "Variable speed": "yes" });
    expect(await written(pointsMapping([{ heading: "T", ...column }]), survey)).toEqual(["T: no-single-number"]);
    expect(await written(pointsMapping([{ heading: "T", ...column, takes: "highest" }]), survey)).toBe("T\r\n1480\r\n");
  });

  it("that cannot be read is written as empty, and that is remarked on", async () => {
    const mapping = pointsMapping([{ heading: "T", fact: "hole_depth", type: "number" }]);
    const filling = await fill(mapping, surveyOf({ "Hole depth (mm)": "deep enough" }));
    expect(filling.targets[0]?.mapped.rows[0]?.values).toEqual([null]);
    expect(filling.remarks).toMatchObject([
      { target: "points", column: "T", text: "hole depth cannot be read; written as empty" },
    ]);
  });
});

describe("an empty value", () => {
  const none = surveyOf({ "Asset tag": "", Machine: "M" });
  const two = { heading: "M", fact: "machine_name" };
  const column = { heading: "T", fact: "asset_tag", type: "code" };

  it.each<readonly [unknown, string]>([
    ["omit", ",M"],
    ["blank", '"",M'],
    [{ clear: "CLEAR" }, "CLEAR,M"],
  ])("with %j is written so", async (whenEmpty, text) => {
    expect(await written(pointsMapping([{ ...column, whenEmpty }, two]), none)).toBe(`T,M\r\n${text}\r\n`);
  });

  it("is refused where it is required, and where it is a key", async () => {
    expect(await written(pointsMapping([{ ...column, required: true }, two]), none)).toEqual(["T: empty"]);
    expect(await written(pointsMapping([{ ...column, key: true }, two]), none)).toEqual(["T: empty"]);
  });

  it("alone in its record is no blank line, which readers skip", async () => {
    expect(await written(pointsMapping([column]), none)).toBe('T\r\n""\r\n');
  });
});

describe("a separator in a value", () => {
  const survey = surveyOf({ "Asset tag": "A;1", Machine: "Mill; old" });
  const columns = [
    { heading: "T", fact: "asset_tag", type: "code" },
    { heading: "M", fact: "machine_name" },
  ];
  const mapping = (separatorInValues: unknown): string =>
    pointsMapping(columns, {}, { form: { separator: "semicolon", separatorInValues } });

  it("is quoted, refused or replaced; in a code never replaced", async () => {
    expect(await written(mapping("quote"), survey)).toBe('T;M\r\n"A;1";"Mill; old"\r\n');
    expect(await written(mapping("stop"), survey)).toEqual(["T: separator", "M: separator"]);
    expect(await written(mapping({ replaceBy: "," }), survey)).toEqual(["T: separator"]);
    const texts = pointsMapping(
      columns.slice(1),
      {},
      { form: { separator: "semicolon", separatorInValues: { replaceBy: "," } } },
    );
    expect(await written(texts, survey)).toBe("M\r\nMill, old\r\n");
  });
});
