/** Strong Kleene truth value: true, false, or null where the facts do not settle it. */
export type Truth = boolean | null;

/** False as soon as one part is false, whatever else is unknown; `all([])` is true. */
export function allOf(parts: Iterable<Truth>): Truth {
  let result: Truth = true;
  for (const part of parts) {
    if (part === false) return false;
    if (part === null) result = null;
  }
  return result;
}

/** True as soon as one part is true, whatever else is unknown; `any([])` is false. */
export function anyOf(parts: Iterable<Truth>): Truth {
  let result: Truth = false;
  for (const part of parts) {
    if (part === true) return true;
    if (part === null) result = null;
  }
  return result;
}

/** Unknown stays unknown: the lack of a value is never evidence for its opposite. */
export function notOf(part: Truth): Truth {
  return part === null ? null : !part;
}
