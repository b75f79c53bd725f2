import { describe, expect, it } from "vitest";
import { readExample } from "../tools/read-example.js";
import { shippedRulebook } from "../tools/shipped.js";

const { words } = await shippedRulebook();

/** What a cell gives as the field: the value, or the code of what is wrong. */
function read(field: string, heading: string, cell: string): unknown {
  const reading = readExample(field, { heading, cell, locale: null, expect: {} }, words);
  if (reading === "heading not matched") throw new Error(`"${heading}" is not matched to ${field}`);
  if (!reading.ok) return reading.code;
  return reading.kind === "word" ? reading.value : reading.interval;
}

describe("a word is never read where the phrase denies it", () => {
  it.each([
    "not yet painted",
    "no longer painted",
    "painted: no",
    "paint: none",
    "paint (none)",
    "paint-free",
    "free of paint",
    "rust-free",
    "rust proof",
    "corrosion resistant steel",
    "nicht mehr lackiert",
    "noch nicht lackiert",
    "korrosionsbeständig",
    "gummifrei",
    "pas encore peint",
    "pintado: no",
  ])("finish of the surface: %s", (cell) => expect(read("surface_finish", "Finish", cell)).toBe("unknown-choice"));

  it.each([
    "Kleben nicht möglich",
    "clamp not possible",
    "magnetic base not allowed",
    "welding not permitted",
    "no pegado",
    "non collé",
    "kein Magnet",
  ])("mounting method: %s", (cell) => expect(read("mounting_method", "Mounting", cell)).toBe("unknown-choice"));

  it.each([
    "umrichterlos",
    "frequenzumrichterlos",
    "umrichterfrei",
    "VFD planned",
    "VFD - none",
    "FU defekt",
    "fixed: no",
    "DOL - nein",
    "constante: no",
  ])("variable speed: %s", (cell) => expect(read("variable_speed", "VFD", cell)).toBe("unknown-choice"));

  it("keeps opposite words apart from the word inside them", () => {
    for (const cell of [
      "unlackiert",
      "unpainted",
      "un-painted",
      "un-\npainted",
      "UNLACKIERT",
      "unbeschichtet",
      "not painted",
      "nicht lackiert",
      "non peint",
      "sin pintar",
      "no coating",
    ]) {
      expect(read("surface_finish", "Finish", cell)).toBe("bare-machined");
    }
    expect(read("variable_speed", "FU", "ungeregelt")).toBe("no");
    expect(read("behind_wall", "Behind wall", "wasserfrei")).toBe("unknown-choice");
    expect(read("hot_work_allowed", "Hot work", "permit not needed")).toBe("unknown-choice");
  });

  it("denies only in its own clause", () => {
    expect(read("mounting_method", "Mounting", "tapped (no drilling)")).toBe("tapped-hole");
    expect(read("mounting_method", "Mounting", "no drilling, glue")).toBe("adhesive-pad");
    expect(read("component", "Component", "Motor No. 3")).toBe("motor");
  });

  it("reads no word beside a box that is not ticked", () => {
    expect(read("variable_speed", "VFD", "☐ VFD")).toBe("doubtful");
    expect(read("surface_finish", "Finish", "[ ] painted")).toBe("doubtful");
    expect(read("polarity_checked", "Polarity checked", "☐ yes")).toBe("doubtful");
    expect(read("polarity_checked", "Polarity checked", "☐")).toBe(false);
    expect(read("polarity_checked", "Polarity checked", "☑")).toBe(true);
  });

  it("takes the phrase that covers most of the text", () => {
    expect(read("direction", "Direction", "3-axialer Sensor")).toBe("triaxial");
    expect(read("variable_speed", "VFD", "nein (DOL)")).toBe("no");
    expect(read("variable_speed", "VFD", "DOL, no VFD")).toBe("no");
  });

  it("does not drop a short word that contradicts", () => {
    expect(read("bearing_position", "Bearing position", "DE (NDE blocked)")).toBe("several-values");
    expect(read("bearing_position", "Bearing position", "NDE 2")).toBe("non-drive-end");
  });
});
