import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { loadRulebook, type Rulebook } from "../../../src/rulebook/index.js";
import { shippedFiles } from "../shipped.js";
import { overlayOf } from "./small-overlay.js";

const KINDS: Readonly<Record<string, string>> = {
  models: "model",
  tables: "table",
  groups: "group",
  measuring: "measuring",
  conditions: "condition",
};
const DATED: readonly string[] = ["limits", "facts", "entries", "measures"];

/** Every thing of the shipped rulebook that an overlay can change, with the keys of its file. */
const THINGS = shippedFiles()
  .filter(({ path }) => path.split("/").length === 3 && !path.startsWith("rules/words/"))
  .map(({ path, text }) => {
    const { id, ...keys } = parse(text, { schema: "core" }) as Readonly<Record<string, unknown>> & { id: string };
    const kind = KINDS[path.split("/")[1] ?? ""] ?? "rule";
    // A rule of the core, or one that is never released, applies as it does.
    const isFixed = keys.releases === "never" || [keys.sets].flat().includes("core");
    const may = Object.keys(keys).filter((key) => !(isFixed && key === "appliesWhen"));
    return { kind, id, keys, may };
  });

const WORD = { reason: "as it is", by: "A. Quill", on: "2026-05-04" };

const manifest = parse(shippedFiles().find(({ path }) => path === "rules/rulebook.yaml")?.text ?? "");

function bookWith(changes: readonly (readonly [thing: (typeof THINGS)[number], keys: readonly string[]])[]): Rulebook {
  const files = changes.map(([{ kind, id, keys }, chosen]) => {
    const all = new Set(chosen.some((key) => DATED.includes(key)) ? [...chosen, "citations"] : chosen);
    const replaces = Object.fromEntries([...all].map((key) => [key, keys[key]]));
    return [`changes/${kind}-${id}.json`, JSON.stringify({ changes: { [kind]: id }, replaces, ...WORD })] as const;
  });
  const over = { name: "same", version: "1.0.0", over: { name: manifest.name, version: manifest.version } };
  const overlay = overlayOf({ "overlay.json": JSON.stringify(over), ...Object.fromEntries(files) });
  const loading = loadRulebook(shippedFiles(), { root: "rules", over: [overlay] });
  if (!loading.ok) throw new Error(loading.findings.map(({ file, text }) => `${file}: ${text}`).join("\n"));
  return loading.rulebook;
}

/** A book without places, overlays and digest. */
function plain({ overlays: _, digest: __, ...book }: Rulebook): unknown {
  return JSON.parse(
    JSON.stringify(book, (key, value) => {
      if (key === "at" || key === "origin") return undefined;
      return value instanceof Map ? [...value] : value;
    }),
  );
}

describe("an overlay that replaces keys by what they are", () => {
  const alone = loadRulebook(shippedFiles(), { root: "rules" });
  const before = alone.ok ? plain(alone.rulebook) : null;

  it("changes nothing, whatever keys it replaces of whatever things", () => {
    expect(THINGS.length).toBeGreaterThan(140);
    const change = fc
      .constantFrom(...THINGS)
      .chain((thing) => fc.tuple(fc.constant(thing), fc.subarray(thing.may, { minLength: 1 })));
    const changes = fc.uniqueArray(change, {
      minLength: 1,
      maxLength: 40,
      selector: ([{ kind, id }]) => `${kind} ${id}`,
    });
    fc.assert(
      fc.property(changes, (chosen) => {
        expect(plain(bookWith(chosen))).toEqual(before);
      }),
      { numRuns: 5 },
    );
  }, 60_000);

  it("changes nothing where it replaces every key of everything", () => {
    const book = bookWith(THINGS.map((thing) => [thing, thing.may]));
    expect(book.overlays[0]?.changed).toHaveLength(THINGS.length);
    expect(book.overlays[0]?.changed.flatMap(({ loosens }) => loosens)).toEqual([]);
    expect(plain(book)).toEqual(before);
  }, 30_000);
});
