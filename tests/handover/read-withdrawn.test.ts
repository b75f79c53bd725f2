import { describe, expect, it } from "vitest";
import { type MappingReading, readMapping } from "../../src/handover/index.js";

const MAPPING = `mapping: trial
version: "1"
title: "A trial"
targets:
  - target: points
    withdrawn: WITHDRAWN
    columns:
      - { heading: Key, field: point, key: true }
      - heading: State
        field: verdict
        values: { pass: suitable, warn: to be looked at, fail: not suitable }
        otherwise: stop
      - { heading: Kind, constant: point }
      - { heading: Verdict, field: verdict }
      - { heading: Place, fact: bearing_position }
      - { heading: Diameter, fact: flat_diameter, type: number, whenEmpty: { clear: none } }
`;

function reading(withdrawn: string): MappingReading {
  return readMapping({ path: "mapping.yaml", text: MAPPING.replace("WITHDRAWN", withdrawn) }, { rules: [] });
}

describe("how a mapping says that rows are withdrawn", () => {
  it("is a word of its own in a column that says how a row stands", () => {
    const read = reading("{ column: State, value: withdrawn }");
    expect(read.ok && read.mapping.targets[0]?.withdrawn).toEqual({ column: "State", value: "withdrawn" });
  });

  it.each([
    ["{ column: Stat, value: gone }", 'the target has no column "Stat"; did you mean "State"?'],
    ["{ column: Key, value: gone }", "a key names the row, and stays as it is when the row is gone"],
    ["{ column: State, value: suitable }", '"suitable" stands there in other rows, too'],
    ["{ column: Kind, value: point }", '"point" stands there in other rows, too'],
    ["{ column: Verdict, value: fail }", '"fail" stands there in other rows, too'],
    ["{ column: Place, value: drive end }", '"drive end" stands there in other rows, too'],
    ["{ column: Diameter, value: gone }", '"gone" is no number; mend it in the mapping'],
    ["{ column: Diameter, value: none }", '"none" is the word that clears the field; take another'],
    ["{ column: State, value: '=gone' }", `"=gone" would be written as "'=gone"; take a word that stays as it is`],
    ["{ column: State }", "value"],
  ])("is refused where it is %s", (withdrawn, said) => {
    const read = reading(withdrawn);
    const findings = read.ok ? [] : read.findings;
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ file: "mapping.yaml", line: 6 });
    expect(findings[0]?.text).toContain(said);
  });
});
