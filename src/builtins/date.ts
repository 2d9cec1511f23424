/** Dates as far as a log needs them: a date is a day number of its own kind. No clock and no times of the day. */

import { failure } from '../expression/index.ts';
import type { Failure, Grid, Value } from '../expression/index.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { date, list, optional, text, whole } from './parameter.ts';
import type { Parameter } from './parameter.ts';
import { DATE, PLAIN_NUMBER } from './type-rules.ts';
import { calendarDate, dayNumber, daysInMonth, readIsoDate } from './calendar.ts';

const part = (
  name: string,
  section: string,
  words: string,
  f: (day: number) => number,
  given: string,
  gives: string,
  source?: string,
): BuiltinDefinition =>
  builtin({
    name,
    group: 'dates',
    section,
    summary: `The ${words} of a date`,
    searchWords: [words, 'date', 'calendar'],
    takes: [date('date')],
    gives: () => PLAIN_NUMBER,
    evaluate: ([day]) => f(day),
    examples: [example(given, gives, source)],
  });

/** The same day some months later, at most the last day of that month. */
function monthsLater(day: number, months: number, last: boolean): number {
  const from = calendarDate(day);
  const index = from.year * 12 + from.month - 1 + months;
  const year = Math.floor(index / 12);
  const month = index - year * 12 + 1;
  const length = daysInMonth(year, month);
  return dayNumber(year, month, last ? length : Math.min(from.day, length));
}

/** 1 Monday to 7 Sunday. Day number 2 (1900-01-01) was a Monday. */
const isoWeekday = (day: number): number => ((((day - 2) % 7) + 7) % 7) + 1;

/** First day of the week for each type of WEEKDAY and WEEKNUM, as an ISO weekday. */
const WEEK_STARTS = new Map([
  [1, 7],
  [2, 1],
  [11, 1],
  [12, 2],
  [13, 3],
  [14, 4],
  [15, 5],
  [16, 6],
  [17, 7],
]);

const place = (day: number, start: number): number => ((isoWeekday(day) - start + 7) % 7) + 1;

function weekdayOf(day: number, type: number): number | Failure {
  if (type === 3) return isoWeekday(day) - 1;
  const start = WEEK_STARTS.get(type);
  return start === undefined ? failure('#NUM!', `there is no week type ${type}`) : place(day, start);
}

/** Week 1 holds 4 January (ISO 8601). */
function isoWeek(day: number): number {
  const thursday = day - isoWeekday(day) + 4;
  return Math.floor((thursday - dayNumber(calendarDate(thursday).year, 1, 1)) / 7) + 1;
}

function weekOf(day: number, type: number): number | Failure {
  if (type === 21 || type === 150) return isoWeek(day);
  const start = WEEK_STARTS.get(type);
  if (start === undefined) return failure('#NUM!', `there is no week type ${type}`);
  const first = dayNumber(calendarDate(day).year, 1, 1);
  return Math.floor((day - first + place(first, start) - 1) / 7) + 1;
}

/** Whole years, months or days between two dates, or what is left over the years or months. */
function between(start: number, end: number, unit: string): number | Failure {
  if (start > end) return failure('#NUM!', 'the start lies after the end');
  const [a, b] = [calendarDate(start), calendarDate(end)];
  const months = (b.year - a.year) * 12 + b.month - a.month - (b.day < a.day ? 1 : 0);
  switch (unit.toLowerCase()) {
    case 'y':
      return Math.floor(months / 12);
    case 'm':
      return months;
    case 'd':
      return end - start;
    case 'ym':
      return months % 12;
    case 'md':
      return end - monthsLater(start, months, false);
    case 'yd':
      return end - monthsLater(start, 12 * Math.floor(months / 12), false);
    default:
      return failure('#NUM!', `"${unit.slice(0, 10)}" is none of y, m, d, ym, md, yd`);
  }
}

const dateList = (name: string): Parameter<Grid> => ({
  ...list(name),
  judge: (arg, index, call) => (arg.type.type === 'grid' ? {} : date(name).judge(arg, index, call)),
});

const daysIn = (grid: Grid | undefined): Set<number> =>
  new Set((grid?.grid.flat() ?? []).filter((cell) => typeof cell === 'number').map(Math.floor));

/** Days off of the week, Monday first; Saturday and Sunday by default. Seven numbers, the standard's order starting on Sunday. */
function daysOff(grid: Grid | undefined): boolean[] | Failure {
  if (!grid) return [false, false, false, false, false, true, true];
  const flags = grid.grid.flat().map((cell) => cell !== 0 && cell !== false && cell !== null);
  if (flags.length !== 7) return failure('#VALUE!', 'the days off are seven numbers from Sunday to Saturday');
  if (flags.every(Boolean)) return failure('#VALUE!', 'every day of the week is off');
  return [...flags.slice(1), flags[0]!];
}

function workdays(start: number, end: number, holidays: Set<number>, off: boolean[]): number {
  const [low, high] = start <= end ? [start, end] : [end, start];
  let count = 0;
  for (let day = low; day <= high; day += 1) {
    if (!off[isoWeekday(day) - 1] && !holidays.has(day)) count += 1;
  }
  return start <= end ? count : -count;
}

export const DATES: readonly BuiltinDefinition[] = [
  builtin({
    name: 'DATE',
    group: 'dates',
    section: '6.10.2',
    summary: 'The date of a year, month and day',
    searchWords: ['date', 'calendar'],
    takes: [whole('year'), whole('month'), whole('day')],
    gives: () => DATE,
    evaluate([year, month, day]) {
      if (year < 1583 || year > 9999) return failure('#NUM!', 'the year lies from 1583 to 9999');
      if (Math.abs(month) > 1e5 || Math.abs(day) > 1e6)
        return failure('#NUM!', 'month or day is far too large');
      return dayNumber(year, month, day);
    },
    examples: [example('DAY(DATE(2006; 1; 32))', '1', 'by hand: 1 February')],
  }),
  builtin({
    name: 'DATEVALUE',
    group: 'dates',
    section: '6.10.4',
    summary: 'The date in a text of the form 2026-03-09',
    searchWords: ['date', 'text', 'parse'],
    takes: [text('text')],
    gives: () => DATE,
    evaluate: ([written]) =>
      readIsoDate(written) ??
      failure('#VALUE!', `"${written.slice(0, 40)}" is no date of the form 2026-03-09`),
    examples: [example('MONTH(DATEVALUE("2004-12-25"))', '12', 'by hand')],
  }),
  part('YEAR', '6.10.23', 'year', (day) => calendarDate(day).year, 'YEAR(DATE(1904; 1; 1))', '1904'),
  part('MONTH', '6.10.13', 'month', (day) => calendarDate(day).month, 'MONTH(DATE(2006; 5; 21))', '5'),
  part('DAY', '6.10.5', 'day of the month', (day) => calendarDate(day).day, 'DAY(DATE(2006; 5; 21))', '21'),
  part(
    'ISOWEEKNUM',
    '6.10.11',
    'ISO week',
    isoWeek,
    'ISOWEEKNUM(DATE(2024; 12; 30))',
    '1',
    'by hand: its Thursday is 2 January 2025',
  ),
  builtin({
    name: 'DAYS',
    group: 'dates',
    section: '6.10.6',
    summary: 'The number of days from a start to an end',
    searchWords: ['days between', 'difference', 'date'],
    takes: [date('end'), date('start')],
    gives: () => PLAIN_NUMBER,
    evaluate: ([end, start]) => end - start,
    examples: [example('DAYS(DATE(1993; 4; 16); DATE(1993; 9; 25))', '-162')],
  }),
  builtin({
    name: 'DATEDIF',
    group: 'dates',
    section: '6.10.3',
    summary: 'Whole years "y", months "m" or days "d" between two dates, or the rest "ym", "md", "yd"',
    searchWords: ['difference', 'age', 'between'],
    takes: [date('start'), date('end'), text('unit')],
    gives: () => PLAIN_NUMBER,
    evaluate: ([start, end, unit]) => between(start, end, unit),
    examples: [example('DATEDIF(DATE(1990; 2; 15); DATE(1993; 9; 15); "ym")', '7')],
  }),
  builtin({
    name: 'EDATE',
    group: 'dates',
    section: '6.10.8',
    summary: 'The same day some months later or earlier',
    searchWords: ['months', 'later', 'due date'],
    takes: [date('date'), whole('months')],
    gives: () => DATE,
    evaluate: ([day, months]) => monthsLater(day, months, false),
    examples: [example('DAY(EDATE(DATE(2006; 3; 31); -1))', '28', 'OpenFormula, test case of EDATE')],
  }),
  builtin({
    name: 'EOMONTH',
    group: 'dates',
    section: '6.10.9',
    summary: 'The last day of the month some months later or earlier',
    searchWords: ['month end', 'last day'],
    takes: [date('date'), whole('months')],
    gives: () => DATE,
    evaluate: ([day, months]) => monthsLater(day, months, true),
    examples: [example('DAY(EOMONTH(DATE(2000; 4; 30); -2))', '29', 'OpenFormula, test case of EOMONTH')],
  }),
  builtin({
    name: 'WEEKDAY',
    group: 'dates',
    section: '6.10.20',
    summary: 'The day of the week: type 1 counts from Sunday = 1, 2 from Monday = 1, 3 from Monday = 0',
    searchWords: ['day', 'week', 'Monday'],
    takes: [date('date'), optional(whole('type'))],
    gives: () => PLAIN_NUMBER,
    evaluate: ([day, type = 1]) => weekdayOf(day, type),
    examples: [example('WEEKDAY(DATE(2005; 1; 1); 1)', '7')],
  }),
  builtin({
    name: 'WEEKNUM',
    group: 'dates',
    section: '6.10.21',
    summary: 'The number of the week in the year; type 21 is the ISO week',
    searchWords: ['week', 'calendar week'],
    takes: [date('date'), optional(whole('type'))],
    gives: () => PLAIN_NUMBER,
    evaluate: ([day, type = 1]) => weekOf(day, type),
    examples: [example('WEEKNUM(DATE(2000; 5; 21); 1)', '22')],
  }),
  builtin({
    name: 'NETWORKDAYS',
    group: 'dates',
    section: '6.10.14',
    summary: 'The number of working days from a start to an end, both included',
    searchWords: ['working days', 'workdays', 'between'],
    takes: [date('start'), date('end'), optional(dateList('holidays')), optional(list('days off'))],
    gives: () => PLAIN_NUMBER,
    evaluate([start, end, holidays, weekend]) {
      if (Math.abs(end - start) > 1e5) return failure('#LIMIT!', 'at most 100 000 days');
      const off = daysOff(weekend);
      return Array.isArray(off) ? workdays(start, end, daysIn(holidays), off) : off;
    },
    examples: [
      example(
        'NETWORKDAYS(DATE(2007; 1; 1); DATE(2007; 1; 12); DATE(2007; 1; 1))',
        '9',
        'OpenFormula, test case of NETWORKDAYS',
      ),
    ],
  }),
  builtin({
    name: 'WORKDAY',
    group: 'dates',
    section: '6.10.22',
    summary: 'The date some working days later or earlier',
    searchWords: ['working days', 'workdays', 'due date'],
    takes: [date('date'), whole('days'), optional(dateList('holidays')), optional(list('days off'))],
    gives: () => DATE,
    evaluate([start, days, holidays, weekend]): Value {
      if (Math.abs(days) > 1e5) return failure('#LIMIT!', 'at most 100 000 days');
      const off = daysOff(weekend);
      if (!Array.isArray(off)) return off;
      const free = daysIn(holidays);
      const step = Math.sign(days);
      let day = start;
      for (let left = Math.abs(days); left > 0;) {
        day += step;
        if (!off[isoWeekday(day) - 1] && !free.has(day)) left -= 1;
      }
      return day;
    },
    examples: [example('DAY(WORKDAY(DATE(2006; 12; 31); 3))', '3', 'OpenFormula, test case of WORKDAY')],
  }),
];
