/** Characters that JSON leaves as they are and that steer a terminal or end a line elsewhere. */
const STEERING = /[\u007f-\u009f\u2028\u2029]/g;

/** JSON of plain data in which no character is left that a terminal could take for a command. */
export function jsonText(data: unknown): string {
  return JSON.stringify(data).replace(STEERING, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, "0")}`);
}
