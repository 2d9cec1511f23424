/** What the help says, as data: the entries are tried one by one in the tests, so that every sentence stays true. */

export interface HelpEntry {
  /** In canonical form; shown and typed with the mark of the place. */
  readonly typed: string;
  /** What the cell shows then. */
  readonly gives: string;
  readonly words: string;
}

/** Typed into an empty metric notebook in which B1 is 50 mm and B2 is 260 m/min. */
export const HELP_ENTRIES: readonly HelpEntry[] = [
  { typed: '12.5 mm', gives: '12.5 mm', words: 'a quantity: number, space, unit' },
  { typed: '3/8 in', gives: '0.375 in', words: 'a fraction of an inch, with its unit' },
  { typed: '2026-03-09', gives: '2026-03-09', words: 'a date' },
  { typed: "'1/4-20", gives: '1/4-20', words: 'a text, whatever it looks like' },
  { typed: '=B1/2+1 mm', gives: '26 mm', words: 'a formula: B1 is a cell; + - * / ^ and brackets' },
  {
    typed: '=CUT.SPINDLE_SPEED(B1; B2)',
    gives: '1655.21 1/min',
    words: 'a function with its arguments, parted by ;',
  },
  { typed: '=B1+3 min', gives: '#UNIT!', words: 'refused: a length and a time do not add' },
  { typed: '=B1/1 mm', gives: '50', words: 'the plain number, without its unit' },
];

export interface HelpPart {
  readonly title: string;
  readonly lines: readonly string[];
}

export const HELP_PARTS: readonly HelpPart[] = [
  {
    title: 'From an empty page to a result',
    lines: [
      'Type what it is into column A, the value with its unit beside it, and a formula below.',
      'Type the first letters of a function and choose it from the list; the line under the page names its arguments and shows the result before you take it.',
      'While a formula is open, pressing another cell puts its address or name into it; press another worksheet in the contents to point there.',
      'A name for a cell is given on the line under the page, and can then stand in formulas instead of the address.',
    ],
  },
  {
    title: 'In the margin',
    lines: [
      'Working: the equation behind the selected cell, with its values put in, its source, and the cells it comes from.',
      'Functions: what can be computed, found in the words of the trade; each with a worked example for your page.',
      'Figures: plots of your values, and sketches to scale, drawn from cells. What-if: variants of the given values, and what they would have to be.',
      'Cautions: everything in the notebook that asks for a look. A caution can be acknowledged with a reason, which is printed.',
      'Review: a walk from formula to formula, each ticked with your initials.',
    ],
  },
  {
    title: 'Units',
    lines: [
      'A value typed without unit into a cell that shows one takes that unit.',
      'A plain number given to a function is read in the unit that the cell then names (0.1 read as 0.1 mm).',
      'The switch metric, inch changes what is shown and nothing that was typed.',
    ],
  },
  {
    title: 'At the machine',
    lines: [
      'Mark a value as changed, a result as shown at the machine, in the margin under Working.',
      'The page At the machine shows these alone, large, with a keypad and the cautions.',
    ],
  },
  {
    title: 'Where your notebooks are',
    lines: [
      'On this device, and nowhere else: nothing you type is sent anywhere.',
      '"saved" at the top means that the last step is on the disk. A file copy is yours to keep; the top line tells how old the last one is.',
      'Where it says "ready without network", the program opens and computes with the network gone.',
    ],
  },
];

/** What the marks on the page mean. */
export const HELP_MARKS: readonly {
  readonly mark: 'given' | 'measured' | 'worked' | 'caution' | 'breach' | 'done';
  readonly words: string;
}[] = [
  { mark: 'given', words: 'on a line: given' },
  { mark: 'measured', words: 'on a dotted line, with a clock: measured' },
  { mark: 'worked', words: 'bare: worked out' },
  { mark: 'caution', words: 'caution: read it in the margin' },
  { mark: 'breach', words: 'a limit is passed' },
  { mark: 'done', words: 'caution, acknowledged' },
];
