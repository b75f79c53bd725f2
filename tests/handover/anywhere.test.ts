import { win32 } from "node:path";
import { afterEach, describe, expect, it, vi } from "vitest";
import { sha256OfBytes } from "../../src/base/index.js";
import { fileNameTrouble } from "../../src/handover/file-name.js";
import { leftOverParts } from "../../src/handover/left-over.js";
import { filesOf, fill, mappingOf, mappingText } from "./made-mapping.js";

/**
 * What would differ on another machine is put in its place here: its language and time zone, its line ends, its
 * separators in paths. Windows itself is untried.
 */
const SURVEY =
  "Point ID;Asset tag;Machine;Next outage;Hole depth (mm)\nP-1;A;Überschußpumpe, die 2. links vom alten Tor;2027-02-01;15.2\nP-2;B;Mill;;\n";
const TARGETS = [
  {
    target: "machines",
    file: "{number}-{asOf}-{part}.csv",
    rowLimit: 1,
    rows: { one: "machine", per: ["machine"] },
    form: { encoding: "windows-1252", separator: "semicolon", decimalSign: "comma", days: "DD.MM.YYYY" },
    columns: [
      { heading: "Key", field: "id", key: true },
      { heading: "Name", field: "machine", length: { most: 20, counted: "characters", tooLong: "shorten" } },
      { heading: "Day", fact: "next_outage", type: "date" },
      { heading: "Depth", fact: "hole_depth", type: "number" },
      { heading: "Looked at", field: "asOf", type: "date" },
    ],
  },
  {
    target: "points",
    file: "points.xlsx",
    columns: [
      { heading: "Key", field: "id", key: true },
      { heading: "File", field: "file" },
    ],
  },
];

async function digestsOf(mapping: string, survey: string): Promise<readonly string[]> {
  const filling = await fill(mapping, survey);
  expect(filling.problems).toEqual([]);
  return (await filesOf(filling)).map(({ name, bytes }) => `${name} ${sha256OfBytes(bytes)}`);
}

const zone = process.env.TZ;
afterEach(() => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
  if (zone === undefined) delete process.env.TZ;
  else process.env.TZ = zone;
});

describe("an export gives the same bytes", () => {
  it("in Lima and in Auckland", async () => {
    process.env.TZ = "America/Lima";
    const lima = await digestsOf(mappingText(TARGETS), SURVEY);
    expect(new Date(2026, 0, 1).getTimezoneOffset()).toBe(300);
    process.env.TZ = "Pacific/Auckland";
    expect(new Date(2026, 0, 1).getTimezoneOffset()).toBe(-780);
    expect(await digestsOf(mappingText(TARGETS), SURVEY)).toEqual(lima);
  });

  it("without asking the machine for its language, its order of letters or the time", async () => {
    const before = await digestsOf(mappingText(TARGETS), SURVEY);
    const never = (what: string) => () => {
      throw new Error(`${what} depends on the machine`);
    };
    const filling = await fill(mappingText(TARGETS), SURVEY);
    for (const name of ["localeCompare", "toLocaleLowerCase", "toLocaleUpperCase"] as const) {
      vi.spyOn(String.prototype, name).mockImplementation(never(name));
    }
    for (const name of ["toLocaleString", "toLocaleDateString", "toLocaleTimeString"] as const) {
      vi.spyOn(Date.prototype, name).mockImplementation(never(name));
    }
    vi.spyOn(Number.prototype, "toLocaleString").mockImplementation(never("toLocaleString"));
    vi.spyOn(Date, "now").mockImplementation(never("Date.now"));
    for (const name of ["Segmenter", "Collator", "NumberFormat", "DateTimeFormat"] as const) {
      vi.spyOn(Intl, name).mockImplementation(never(name));
    }
    const again = await fill(mappingText(TARGETS), SURVEY);
    expect(again.targets.map(({ mapped }) => mapped)).toEqual(filling.targets.map(({ mapped }) => mapped));
    const tables = (await filesOf(again)).filter(({ name }) => !name.endsWith(".xlsx"));
    expect(tables.map(({ name, bytes }) => `${name} ${sha256OfBytes(bytes)}`)).toEqual(
      before.filter((one) => !one.includes(".xlsx")),
    );
  });

  it("whatever the line ends of mapping and survey", async () => {
    const text = JSON.stringify(JSON.parse(mappingText(TARGETS)), null, 1);
    const lf = await digestsOf(text, SURVEY);
    expect(await digestsOf(text.replaceAll("\n", "\r\n"), SURVEY.replaceAll("\n", "\r\n"))).toEqual(lf);
    expect((await mappingOf(text.replaceAll("\n", "\r\n"))).digest).toBe((await mappingOf(text)).digest);
  });

  it("with file names that are no paths to any system", async () => {
    const names = (await filesOf(await fill(mappingText(TARGETS), SURVEY))).map(({ name }) => name);
    expect(names[0]).toBe("01-2026-11-25-1.csv");
    for (const name of names) expect(win32.basename(win32.join("C:\\exports", name))).toBe(name);
    for (const name of ["a\\b.csv", "a/b.csv", "c:x.csv", "CON.csv", "lpt1.csv", "..csv.", " a.csv", "a?.csv"]) {
      expect(fileNameTrouble(name, false), name).not.toBeNull();
    }
  });
});

describe("parts of an earlier export", () => {
  it("that would be loaded again are found by their names", async () => {
    const { targets } = await mappingOf(mappingText(TARGETS));
    const there = [
      "01-2026-11-25-1.csv",
      "01-2026-11-25-3.csv",
      "01-2026-11-24-3.csv",
      "01-2026-11-25-x.csv",
      "points.xlsx",
    ];
    expect(leftOverParts(targets, "2026-11-25", there, ["01-2026-11-25-1.csv"])).toEqual(["01-2026-11-25-3.csv"]);
  });
});
