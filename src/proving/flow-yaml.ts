/** Data as flow YAML: plain where it reads back as the same text, in quotes elsewhere. */
export function flowYaml(data: unknown): string {
  if (Array.isArray(data)) return `[${data.map(flowYaml).join(", ")}]`;
  if (typeof data === "object" && data !== null) {
    const pairs = Object.entries(data).map(([key, value]) => `${key}: ${flowYaml(value)}`);
    return pairs.length === 0 ? "{}" : `{ ${pairs.join(", ")} }`;
  }
  if (typeof data !== "string") return String(data);
  return PLAIN.test(data) && !NOT_TEXT.test(data) ? data : JSON.stringify(data);
}

const PLAIN = /^[\p{L}\d](?:[\p{L}\p{N}\p{M} _.·/²³%°µ√-]*[\p{L}\p{N}²³%°])?$/u;
const NOT_TEXT = /^(?:[+-]?[\d.]+(?:e[+-]?\d+)?|0[xob][\da-f]+|null|true|false|yes|no)$/i;
