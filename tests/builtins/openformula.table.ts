/** What the published cases of OpenFormula meet in this program besides agreement, each with its rule. */

/** Cases that a rule of this formula language refuses or answers differently on purpose. */
export const REFUSED = new Map<string, string>([
  ['of2010-4.8-09', 'F6: a range lies on one worksheet'],
  ['of2010-4.11.3-01', 'F6a: no names of other files'],
  ['of2010-4.11.4-02', 'F6a: no names of other files'],
  ['of2010-5.4.11-03', 'F6: a range has two corners'],
  ['of2010-5.4.13-01', 'F6: ranges are not joined; they are given as separate arguments'],
  ['of2010-5.4.13-03', 'F6: no intersections of ranges'],
  ['of2010-5.4.13-04', 'F6: ranges are not joined'],
  ['of2010-5.14.6-02', 'F6: ranges are not joined'],
  ['of2010-5.10.2-02', 'F11, dates: a date minus a date is a time'],
  ['of2010-5.10.2-03', 'F14: a plain number does not meet a date; a day is 1 day'],
  ['of2010-5.10.2-04', 'F14: a plain number does not meet a date; a day is 1 day'],
  ['of2010-5.10.2-05', 'F14: a plain number does not meet a date; a day is 1 day'],
  ['of2010-6.4-04', 'F11, dates: a date minus a date is a time'],
  ['of2010-6.4-10', 'F11, dates: a date minus a date is a time'],
  ['of2010-6.4-11', 'F11, dates: a date minus a date is a time'],
  ['of2010-5.13.34-10', 'F3: a time of the day is no number'],
  ['of2010-5.13.34-16', 'F3: a date is no number'],
  [
    'of2010-5.13.34-20',
    'F3, F14: nothing turns into a date unless it is an ISO date, and a number is not compared with a date',
  ],
  ['of2010-5.18.66-01', 'F3: the test data write dates as "12 Mar 2005", which stay text'],
  ['of2010-5.16.5-01', 'F14, F17: ACOT gives an angle, from which no plain number is subtracted'],
  ['of2010-5.20.20-06', 'no wildcards and no patterns (formula limits)'],
  ['std14-6.13.9-s03', 'no wildcards and no patterns (formula limits)'],
  ['of2010-7.3-01', 'text in arithmetic is #VALUE! (small decisions)'],
  ['of2010-7.3-03', 'text in arithmetic is #VALUE! (small decisions)'],
  ['of2010-7.3-07', 'text in arithmetic is #VALUE! (small decisions)'],
  ['of2010-7.3-09', 'text in arithmetic is #VALUE! (small decisions)'],
  ['of2010-5.13.29-03', 'F25, F26: no formulas in braces; ROW is not on the list'],
  ['of2010-7.3-10', 'text in arithmetic is #VALUE! (small decisions)'],
]);

/** Cases whose published value can not be reached by the standard's own words, and what comes out. */
export const NOT_REPRODUCED = new Map<string, string>([
  ['of2010-5.10.14-04', 'two whole weeks with two days off each hold 10 working days, not 9'],
  [
    'of2010-5.10.14-05',
    'two whole weeks hold 10 working days; the holiday falls on a Saturday, which is off, so not 8',
  ],
]);

/** Cases whose interchange form or misprint is written by hand in the form the cell takes; the expected value stays. */
export const REWRITTEN = new Map<string, string>([
  ['of2010-4.8-07', '=B4'],
  ['of2010-4.8-08', '=SUM(B4:B5)'],
  ['of2010-5.18.10-03', '=BINOMDIST(10;10;0.1;1)'],
  ['of2010-5.18.10-04', '=BINOMDIST(4;10;0.4;1)'],
  ['of2010-5.18.46-08', '=MAXA(B6:B7)'],
  ['of2010-5.18.49-06', '=MINA(B6:C6)'],
]);

/** Functions of the cases that are not on the list of allowed functions, how many cases use them, and why. */
export const NOT_ON_THE_LIST = new Map<string, { readonly cases: number; readonly reason: string }>([
  ['AREAS', { cases: 1, reason: 'asks about references; there are no joined ranges' }],
  ['CELL', { cases: 4, reason: 'asks about the place of a cell, not its value' }],
  ['CONVERT', { cases: 8, reason: 'quantities carry their units (F7): B3/1 in' }],
  ['FORMULA', { cases: 1, reason: 'asks about the text of a cell' }],
  ['LENGTH', { cases: 1, reason: 'no function of the standard; stands beside FORMULA' }],
  ['HOUR', { cases: 2, reason: 'dates have no time of the day; a duration is a time with its unit' }],
  ['MINUTE', { cases: 2, reason: 'dates have no time of the day' }],
  ['SECOND', { cases: 3, reason: 'dates have no time of the day' }],
  ['TIME', { cases: 8, reason: 'dates have no time of the day' }],
  ['TIMEVALUE', { cases: 3, reason: 'dates have no time of the day' }],
  ['TODAY', { cases: 1, reason: 'no clock in formulas (F10)' }],
  ['INDIRECT', { cases: 2, reason: 'references are known before computing (F12)' }],
  ['ISREFERENCE', { cases: 1, reason: 'no function of the standard; stands beside INDIRECT' }],
  ['OFFSET', { cases: 4, reason: 'references are known before computing (F12)' }],
  ['ISFORMULA', { cases: 4, reason: 'asks about the text of a cell' }],
  ['ISREF', { cases: 4, reason: 'asks about references, not values' }],
  ['ROW', { cases: 1, reason: 'asks about the place of a cell, not its value' }],
  ['SHEET', { cases: 1, reason: 'asks about the place of a cell, not its value' }],
  ['SHEETS', { cases: 1, reason: 'asks about references, not values' }],
  ['SUBTOTAL', { cases: 2, reason: 'asks which cells hold subtotals and which rows are hidden' }],
]);
