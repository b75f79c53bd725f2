import { showText } from "../../base/index.js";
import { type CellReading, trouble } from "./cell-reading.js";
import { openNumberText } from "./number-opening.js";
import { readDuration, readTolerance, readTwoNumbers } from "./number-pairs.js";
import { type NumberContext, type NumberParts, takeNumber, unitOfText } from "./number-parts.js";
import { finishNumber } from "./number-result.js";

/** Longest text that can be meant as a number; what is longer is refused before any pattern runs over it. */
const LONGEST_NUMBER = 120;

/** Units whose parts are written as fractions. */
const WITH_FRACTIONS: ReadonlySet<string> = new Set(["in", "ft", "yd", "h", "d", "week"]);

/** Reads a text as the number of a quantity or count field. */
export function readNumberText(text: string, context: NumberContext): CellReading {
  if (text.length > LONGEST_NUMBER) return trouble("not-a-number", "expected a number, found a long text");
  const opened = openNumberText(text, context.field, context.vocabulary);
  if (!opened.ok) return opened;
  // In a cable type the number of cores stands first (4x0,34, 3G1,5); the conductor size is the last number.
  const size =
    context.field.dimension === "area" ? opened.rest.replace(/^(?:\d{1,3}\s*[x×g]\s*)+(?=[\d.,])/i, "") : opened.rest;
  const first = takeNumber(size, context);
  if (!first.ok) return first;
  const rest = first.rest.trim();
  const glued = first.rest !== "" && !/^\s/.test(first.rest);
  const parts = { first, rest, glued, opened };
  const reading = readTolerance(parts, context) ?? readDuration(parts, context) ?? readTwoNumbers(parts, context);
  if (reading === null && opened.from) {
    return trouble("inequality", "one end of a range is not a value; write both ends");
  }
  return reading ?? readOne(parts, context);
}

function readOne({ first, rest, glued, opened }: NumberParts, context: NumberContext): CellReading {
  const unit = unitOfText(opened.unitAhead || rest, glued, context);
  if (!unit.ok) return unit;
  if (opened.unitAhead !== "" && rest !== "") return trouble("unknown-unit", `found "${showText(rest)}" too`);
  const stated = unit.unit ?? context.headingUnit;
  if (first.fraction && stated === null) {
    return trouble("ambiguous-number", "a fraction without a unit may be inches or hours; write the unit");
  }
  if (first.fraction && !WITH_FRACTIONS.has(stated?.id ?? "")) {
    return trouble("several-values", `expected one number; ${stated?.id} is not written with fractions`);
  }
  return finishNumber(
    [first.value, first.value],
    { half: null, range: false, lastPlace: first.lastPlace, unit, opened },
    context,
  );
}
