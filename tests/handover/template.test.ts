import { describe, expect, it } from "vitest";
import { fillTemplate, readTemplate } from "../../src/handover/template.js";

const WORDS: Readonly<Record<string, string>> = { machine: "Mill 2", direction: "axial", row: "7" };

function fill(text: string): string {
  const reading = readTemplate(text, (name, unit) => ({
    ok: true,
    name: { of: "field", name: unit ? `${name}|${unit}` : name },
  }));
  if (!reading.ok) return `wrong: ${reading.text}`;
  const filled = fillTemplate(reading.template, (name) => (name.of === "field" ? (WORDS[name.name] ?? null) : null));
  return filled.ok ? filled.text : `empty: ${filled.empty.of === "field" ? filled.empty.name : ""}`;
}

describe("a template", () => {
  it.each([
    ["{machine}, {direction}", "Mill 2, axial"],
    ["{machine}[, {component}][, {direction}]", "Mill 2, axial"],
    ["[{component}: ]{machine}", "Mill 2"],
    ["[{component}]", ""],
    ["{{machine}} [[{row}]]", "{machine} [7]"],
    ["{ machine }", "Mill 2"],
    ["{machine}: {component}", "empty: component"],
    ["{speed in r/min}", "empty: speed|r/min"],
    ["=1+1 {machine}", "=1+1 Mill 2"],
  ])("%s gives %s", (template, text) => {
    expect(fill(template)).toBe(text);
  });

  it.each(["{machine", "machine}", "[{machine}", "{machine}]", "[a[{machine}]]", "[always]"])(
    "%s is refused",
    (template) => {
      expect(fill(template)).toMatch(/^wrong: /);
    },
  );
});
