const PLAIN_DAY = /^(\d{4})-(\d{2})-(\d{2})$/;

/** A calendar day as YYYY-MM-DD; days compare as text, so no time zone can enter. */
export type PlainDay = string;

/** Whether the text is a day that exists, written YYYY-MM-DD. */
export function isPlainDay(text: string): boolean {
  const parts = PLAIN_DAY.exec(text);
  if (!parts) return false;
  return dayExists(Number(parts[1]), Number(parts[2]), Number(parts[3]));
}

/** Whether the day exists in the Gregorian calendar; year 1 to 9999. */
export function dayExists(year: number, month: number, day: number): boolean {
  if (year < 1 || month < 1 || month > 12 || day < 1) return false;
  const days = [31, isLeapYear(year) ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  return day <= (days[month - 1] ?? 0);
}

/** YYYY-MM-DD of the parts; the caller has checked that the day exists. */
export function plainDay(year: number, month: number, day: number): PlainDay {
  return `${String(year).padStart(4, "0")}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
}

/** The day before, used to look at both sides of a date limit. */
export function dayBefore(day: PlainDay): PlainDay {
  return new Date(Date.parse(`${day}T00:00:00Z`) - 86_400_000).toISOString().slice(0, 10);
}

/** Days from one day to another; below 0 where the second one comes first. */
export function daysBetween(from: PlainDay, to: PlainDay): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / 86_400_000);
}

/** The day that comes so many days later; up to the year 9999. */
export function laterDay(day: PlainDay, days: number): PlainDay {
  return new Date(Date.parse(`${day}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}

/** The day of a moment in UTC, the same on every machine. */
export function utcDay(moment: Date): PlainDay {
  return moment.toISOString().slice(0, 10);
}

function isLeapYear(year: number): boolean {
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
}
