import fc from "fast-check";
import { expect, it } from "vitest";
import { sha256OfData, sha256OfLargeData } from "../../src/base/index.js";

it("a digest made piece by piece is that of the whole", () => {
  const json = fc.jsonValue({ maxDepth: 7 });
  fc.assert(fc.property(json, (data) => sha256OfLargeData(data) === sha256OfData(data)));
  for (const data of [
    {},
    [],
    [[[[[[{}]]]]]],
    { b: 1, a: undefined, "\ufb33": 0, "\u{1f600}": 1, é: [null, -0, 1e21] },
  ]) {
    expect(sha256OfLargeData(data)).toBe(sha256OfData(data));
  }
  expect(() => sha256OfLargeData(undefined)).toThrow(TypeError);
});
