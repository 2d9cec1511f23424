/** Days of the Gregorian calendar as day numbers: day 0 is 1899-12-30, as the formula standard suggests. */

const DAY_MILLISECONDS = 86_400_000;
/** Day number of 1970-01-01. */
const UNIX_DAY = 25_569;

export interface CalendarDate {
  readonly year: number;
  /** 1 to 12. */
  readonly month: number;
  readonly day: number;
}

/** Months and days beyond their ends run over into the next ones. */
export function dayNumber(year: number, month: number, day: number): number {
  const date = new Date(0);
  date.setUTCFullYear(year, month - 1, day);
  return Math.round(date.getTime() / DAY_MILLISECONDS) + UNIX_DAY;
}

export function calendarDate(day: number): CalendarDate {
  const date = new Date((Math.floor(day) - UNIX_DAY) * DAY_MILLISECONDS);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}

export const daysInMonth = (year: number, month: number): number =>
  calendarDate(dayNumber(year, month + 1, 0)).day;

/** The day number of "2026-03-09" (a time of the day behind it is passed over); undefined for anything else. */
export function readIsoDate(text: string): number | undefined {
  const match = /^(\d{4})-(\d{2})-(\d{2})(?:[T ]\d{2}:\d{2}(?::\d{2}(?:\.\d+)?)?)?$/.exec(text.trim());
  if (!match) return undefined;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return undefined;
  return dayNumber(year, month, day);
}
