import { readFileSync, writeFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { EXPORT_RECEIPT, EXPORTED_STATE, exportedStateText, exportReceiptText } from "../../../src/handover/index.js";
import { acceptedState, fileOf, receiptOf } from "./made.js";

/** Set to 1 to write the schema files anew from the source. */
const REWRITE = "WRITE_SCHEMAS";

const FILES = [fileOf([["a", "K1", "pass", null]])];
const STATE = acceptedState(FILES);
const LATER = [fileOf([["b", "K2", "fail", "two"]])];

const FORMS = [
  ["exported-state", EXPORTED_STATE, [...exportedStateText(STATE)].join("")],
  ["export-receipt", EXPORT_RECEIPT, [...exportReceiptText(receiptOf(LATER, STATE))].join("")],
] as const;

describe.each(FORMS)("the schema %s", (name, form, text) => {
  const path = new URL(`../../../schemas/${name}.schema.json`, import.meta.url);
  const schema = { $id: `${name}.schema.json`, ...z.toJSONSchema(form, { target: "draft-2020-12" }) };
  const validates = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true }).compile(schema);

  it(`is what the file holds (${REWRITE}=1 writes it anew)`, () => {
    if (process.env[REWRITE] === "1") writeFileSync(path, `${JSON.stringify(schema, null, 2)}\n`);
    // The formatter breaks lines its own way, so that only the order of keys and the values count.
    expect(JSON.stringify(JSON.parse(readFileSync(path, "utf8")))).toBe(JSON.stringify(schema));
  });

  it("accepts what is written, and nothing that lacks a key or has one more", () => {
    const document = JSON.parse(text) as Record<string, unknown>;
    validates(document);
    expect(validates.errors).toBeNull();
    for (const key of Object.keys(document)) expect(validates({ ...document, [key]: undefined }), key).toBe(false);
    expect(validates({ ...document, more: 1 })).toBe(false);
  });
});
