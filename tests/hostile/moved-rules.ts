/**
 * The rule files of the collection have an outer shape of their own, on which any loader stumbles first. Here the
 * hostile part is put into a rule that is good but for it. Everything is done on the text: a parser would take out
 * keys that stand twice, or `__proto__`.
 */

/** A rule as JSON, by key; each value is JSON text. */
const GOOD: Readonly<Record<string, string>> = {
  id: '"hot-surface"',
  title: '"not too hot"',
  sets: '["core"]',
  stages: '["proposed"]',
  appliesWhen: '{"fact": "mounting_method", "operator": "equal", "value": "adhesive-pad"}',
  judges: '"surface_temperature"',
  limits: '[{"from": "2026-01-01", "until": null, "fail": {"above": "80 °C"}, "cites": ["heat"]}]',
  citations: '{"heat": {"basis": "from-memory", "says": "made up for a test"}}',
  messages: '{"fail": "too hot"}',
  remedy: '{"text": "a tapped hole", "change": []}',
  cases: `[{"name": "cool", "given": {"surface_temperature": "80 °C"}, "expect": "pass"},
    {"name": "hot", "given": {"surface_temperature": "81 °C"}, "expect": "fail"},
    {"name": "open", "given": {}, "expect": "undecided"}]`,
  casesGive: '{"mounting_method": "adhesive-pad", "asOf": "2026-06-01"}',
};

/** The good rule with some of its values as JSON text, and with further text before its end. */
export function goodRule(changed: Readonly<Record<string, string | undefined>> = {}, more = ""): string {
  const given = Object.entries(changed).flatMap(([key, text]) => (text === undefined ? [] : [[key, text]]));
  const lines = Object.entries({ ...GOOD, ...Object.fromEntries(given) }).map(([key, text]) => ` "${key}": ${text}`);
  return `{\n${lines.join(",\n")}${more === "" ? "" : `,\n ${more}`}\n}\n`;
}

/** The text of every value of a key, in the order of the file. */
export function valuesOf(raw: string, key: string): readonly string[] {
  return [...raw.matchAll(new RegExp(`"${key}":\\s*`, "g"))].map(({ index, 0: found }) => {
    const from = index + found.length;
    return raw.slice(from, endOfValue(raw, from));
  });
}

/** Brackets are counted, not followed: some files nest 20,000 of them. */
function endOfValue(raw: string, from: number): number {
  let open = 0;
  for (let at = from; at < raw.length; at++) {
    const sign = raw[at] ?? "";
    if (sign === '"') at = endOfText(raw, at);
    else if ("[{".includes(sign)) open += 1;
    else if ("]}".includes(sign)) open -= 1;
    if (open === 0 && (sign === '"' || "]}".includes(sign))) return at + 1;
  }
  throw new Error("the value has no end");
}

function endOfText(raw: string, from: number): number {
  let at = from + 1;
  while (raw[at] !== '"') at += raw[at] === "\\" ? 2 : 1;
  return at;
}

/** Words of the collection for words of ours; what is hostile is none of them. */
function inOurWords(when: string): string {
  return when
    .replaceAll('"field"', '"fact"')
    .replaceAll('"machine"', '"machine_name"')
    .replaceAll('"shaft_speed"', '"nominal_speed"')
    .replace(/"value": (\d+),\s*"unit": "([^"]*)"/g, '"value": "$1 $2"');
}

/** Each rule of a file of the collection as one of ours. */
export function movedRules(raw: string): readonly string[] {
  const column = (key: string): readonly string[] => valuesOf(raw, key);
  const [ids, titles, whens, remedies] = [column("id"), column("title"), column("when"), column("remedy")];
  const [requires, skips] = [column("requires"), column("skipIf")];
  return whens.map((when, i) =>
    goodRule(
      {
        id: ids[i],
        title: titles[i],
        appliesWhen: inOurWords(when),
        ...(remedies[i] === undefined ? {} : { remedy: `{"text": ${remedies[i]}, "change": []}` }),
      },
      requires[i] === undefined ? "" : `"requires": ${requires[i]}, "skipIf": ${skips[i]}`,
    ),
  );
}
