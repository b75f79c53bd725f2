import { type Dimension, dimensionsSpelled, otherQuantityOf, type Unit, unitSpelled } from "../../base/index.js";
import { type CellTrouble, trouble } from "./cell-reading.js";

/** What stands behind a number, understood. */
export interface UnitRead {
  readonly ok: true;
  /** Null where the text says no unit. */
  readonly unit: Unit | null;
  readonly supply: "dc" | "ac" | null;
}

const DC = /^([mk]?v)(?:dc|d\/c|=|cc|gs|⎓|⎓)$|^dc([mk]?v)$/;
const AC = /^([mk]?v)(?:ac|~|ca|ws|∼)$|^ac([mk]?v)$/;
const BOTH = /^[mk]?v(?:ac\/dc|dc\/ac|uc|ca\/cc|cc\/ca)$/;
const PEAK = /^(.*?)\s*(?:pk-pk|p-p|pk|peak|0-p|pp|ss|spitze|pico|crête|crete)$/i;
const EFFECTIVE = /^(.*?)\s*(?:rms|eff\.?|r\.m\.s\.?)$/i;

/**
 * The unit that a text behind (or around) a number spells, for a field of the given dimension.
 *
 * @param text - the text, trimmed; empty if there is none
 * @param glued - the text follows the digits without a blank
 * @param takesAlternating - the field asks for the kind of supply, so that V AC is an answer
 */
export function readUnit(
  text: string,
  dimension: Dimension,
  glued: boolean,
  takesAlternating: boolean,
): UnitRead | CellTrouble {
  if (text === "" || (dimension === "temperature" && /^[°º]$/.test(text)))
    return { ok: true, unit: null, supply: null };
  if (dimension === "dc-voltage") {
    const voltage = readVoltageUnit(text, takesAlternating);
    if (voltage) return voltage;
  }
  const spelled = vibrationUnit(text, dimension);
  if (spelled === null) {
    return trouble("not-rms", "expected an effective value (rms); a peak value is no substitute, measure again");
  }
  const unit = unitSpelled(dimension === "rotational-speed" ? spelled.replace(/^\//, "1/") : spelled, dimension);
  if (unit) return { ok: true, unit, supply: null };
  if (dimensionsSpelled(text).length > 0 || otherQuantityOf(text) !== null) {
    return trouble("wrong-dimension", `"${text}" is not a unit of ${dimension}; correct the cell or the column`);
  }
  if (glued && /^[\p{L}\d]+$/u.test(text)) {
    return trouble("not-a-number", "expected a number alone or with its unit; digits and letters are mixed");
  }
  return trouble("unknown-unit", `"${text}" is no unit known for ${dimension}; write the number with its unit alone`);
}

function vibrationUnit(text: string, dimension: Dimension): string | null {
  if (dimension !== "vibration-velocity" && dimension !== "vibration-acceleration") return text;
  if (PEAK.test(text)) return null;
  return EFFECTIVE.exec(text)?.[1] ?? text;
}

function readVoltageUnit(text: string, takesAlternating: boolean): UnitRead | CellTrouble | null {
  const folded = text.toLowerCase().replace(/[\s.]/g, "");
  if (BOTH.test(folded)) return trouble("several-values", "expected one kind of supply, found AC and DC; name the one");
  const direct = DC.exec(folded);
  if (direct) return voltage(direct, "dc");
  const alternating = AC.exec(folded);
  if (!alternating) return null;
  if (!takesAlternating) return trouble("wrong-dimension", "expected a DC voltage, found an alternating one");
  return voltage(alternating, "ac");
}

function voltage(found: RegExpExecArray, supply: "dc" | "ac"): UnitRead {
  const spelled = found[1] ?? found[2] ?? "v";
  return { ok: true, unit: unitSpelled(spelled === "mv" ? "mV" : spelled, "dc-voltage"), supply };
}
