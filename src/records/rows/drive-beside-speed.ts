import { factOf } from "../../facts/index.js";
import { readPhrase } from "../cells/cell-choice.js";
import type { NumberContext } from "../cells/number-parts.js";
import { type Entry, knownAs, reasonOf, unknownAs } from "./entries.js";

/** What the remarks beside a speed say of the drive: "1480 (VFD)" is not the lowest speed of its shaft. */
export function driveBesideSpeed(remarks: readonly string[], { field, vocabulary }: NumberContext): readonly Entry[] {
  if (field.dimension !== "rotational-speed") return [];
  const drive = factOf("variable_speed");
  return remarks.flatMap((remark): readonly Entry[] => {
    // A yes or a tick beside a number answers nothing about the drive.
    if (vocabulary.isYes(remark) || vocabulary.isNo(remark)) return [];
    const reading = readPhrase(remark, [drive], vocabulary).byFact.get(drive.id);
    if (!reading) return [];
    if (reading.ok && reading.kind === "number") return [];
    const said = reading.ok ? knownAs(reading.value) : unknownAs(reasonOf(reading));
    return [{ fact: drive.id, said, empty: false, mention: true }];
  });
}
