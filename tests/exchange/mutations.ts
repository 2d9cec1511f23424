/** Seeded damage to the text of a notebook file: to its bytes, and to what is written in it. */

/** JSON as written: keys may stand twice, numbers are text. */
export type Node =
  | { readonly type: 'object'; entries: [key: string, value: Node][] }
  | { readonly type: 'array'; items: Node[] }
  | { readonly type: 'raw'; text: string };

export interface Damaged {
  /** The names of what was done, for the message of a failing test. */
  readonly done: string;
  readonly text: string;
}

/** Numbers that repeat with the seed (mulberry32). */
export class Dice {
  #state: number;

  constructor(seed: number) {
    this.#state = seed >>> 0;
  }

  /** A whole number from 0 to below the limit. */
  below(limit: number): number {
    this.#state = (this.#state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), this.#state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) % limit;
  }

  pick<T>(list: readonly [T, ...T[]] | readonly T[]): T {
    const picked = list[this.below(list.length)];
    if (picked === undefined) throw new RangeError('nothing to pick from');
    return picked;
  }
}

const raw = (value: unknown): Node => ({ type: 'raw', text: JSON.stringify(value) });

export function nodeOf(value: unknown): Node {
  if (Array.isArray(value)) return { type: 'array', items: value.map(nodeOf) };
  if (typeof value !== 'object' || value === null) return raw(value);
  return { type: 'object', entries: Object.entries(value).map(([key, each]) => [key, nodeOf(each)]) };
}

export function textOf(node: Node): string {
  if (node.type === 'raw') return node.text;
  if (node.type === 'array') return `[${node.items.map(textOf).join(',')}]`;
  return `{${node.entries.map(([key, value]) => `${JSON.stringify(key)}:${textOf(value)}`).join(',')}}`;
}

/** A value's place in its holder. */
interface Slot {
  readonly node: Node;
  readonly key: string;
  put(node: Node): void;
}

function slotsOf(node: Node, into: Slot[] = []): Slot[] {
  if (node.type === 'object') {
    for (const entry of node.entries) {
      into.push({ node: entry[1], key: entry[0], put: (next) => void (entry[1] = next) });
      slotsOf(entry[1], into);
    }
  } else if (node.type === 'array') {
    for (const [index, item] of node.items.entries()) {
      into.push({ node: item, key: '', put: (next) => void (node.items[index] = next) });
      slotsOf(item, into);
    }
  }
  return into;
}

const objectsOf = (root: Node): Extract<Node, { type: 'object' }>[] =>
  [root, ...slotsOf(root).map(({ node }) => node)].filter((node) => node.type === 'object');

const NUMBERS = [
  '0', '-0', '-1', '0.5', '15', '16', '2001', '1e9', '1e400', '-1e400', '1e-400', '9007199254740993', '1e308',
  'NaN', 'Infinity', '0x10', '01', '"NaN"', '"1e5"',
] as const; // prettier-ignore
const POISON = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  'kept',
  'then',
] as const;
const STRANGE = ['null', 'true', '[]', '{}', '""', '[[]]', '{"a":1}', '-5', '"x"', '[null,null]'] as const;
const ADDRESSES = [
  'A0', 'A01', 'a1', '$A$1', 'BM1', 'A2001', 'BL2000', 'ZZ40000', 'A1:B2', '1', '', 'A-1', 'A1 ', 'Ａ１', 'A1.5', 'AAA1',
] as const; // prettier-ignore
const WORDS = [
  '\ud800', 'a\udc00b', '\u0000', 'two\nlines', '\u2028', '\u202egnirts', "it's \"quoted\"", '😀', 'é', ' ', '', '__proto__',
  'constructor', '\ufeff', "'", '=', '#REF!', '<b>',
] as const; // prettier-ignore
export const CONTENTS = [
  '=A1', '=B1+B2', '=SUM(A1:BL2000)', '=SUM(B1:ZZ40000)', '=SUM(', '=)', '=1/0', '="', '=__proto__', '=constructor(1)',
  '=toString', '=A1:B2', '={1;2|3}', '={1;2|3;4}', '=-2^2^2', '=1e400', '1e400 mm', '5 %', '12 xyzzy', '1e5', "'TRUE", 'TRUE',
  '=IFERROR(A1;1)', '=REPT("a";1e9)', "='x'.A1", '=Feeds.D', '=nothing', '\ud800', '="\ud800"&1', '=1 mm+1 s', '=B1^B2',
  '=COUNTIF(A1:B30;"a*a*a*a*a*a*a*a*a*b")', `=${'('.repeat(700)}1${')'.repeat(700)}`, `=1${'+1'.repeat(1000)}`, '0000-00-00',
  '9999-12-31', '=INDEX(A1:C3;-1;1e9)', '=VLOOKUP(1;A1:C30;2)', '=1;2', '= ', '=@', '=1 1/2 in', '−5 mm', '１２ mm',
] as const; // prettier-ignore

type Change = (root: Node, dice: Dice) => void;

const STRUCTURAL: Readonly<Record<string, Change>> = {
  'renames a key': (root, dice) => {
    const { entries } = dice.pick(objectsOf(root));
    if (entries.length > 0) dice.pick(entries)[0] += dice.pick(['x', ' ', '\u0000', '\ud800', '1']);
  },
  'repeats a key': (root, dice) => {
    const { entries } = dice.pick(objectsOf(root));
    if (entries.length > 0) entries.push([dice.pick(entries)[0], dice.pick(entries)[1]]);
  },
  'drops a key': (root, dice) => {
    const { entries } = dice.pick(objectsOf(root));
    entries.splice(dice.below(entries.length + 1), 1);
  },
  'changes a type': (root, dice) => dice.pick(slotsOf(root)).put({ type: 'raw', text: dice.pick(STRANGE) }),
  'changes a number': (root, dice) => {
    const numbers = slotsOf(root).filter(({ node }) => node.type === 'raw' && /^-?\d/.test(node.text));
    if (numbers.length > 0) dice.pick(numbers).put({ type: 'raw', text: dice.pick(NUMBERS) });
  },
  'puts an odd number in': (root, dice) =>
    dice.pick(objectsOf(root)).entries.push(['extra', { type: 'raw', text: dice.pick(NUMBERS) }]),
  'nests deeply': (root, dice) => {
    const depth = dice.pick([3, 15, 19, 20, 21, 40, 3000]);
    const [from, to] = dice.pick([
      ['[', ']'],
      ['{"a":', '}'],
    ] as const);
    const text = `${from.repeat(depth)}1${to.repeat(depth)}`;
    dice.pick(objectsOf(root)).entries.push(['deep', { type: 'raw', text }]);
  },
  'adds a key of objects': (root, dice) =>
    dice.pick(objectsOf(root)).entries.push([dice.pick(POISON), nodeOf({ polluted: true })]),
  'lengthens a text': (root, dice) => {
    const text = dice
      .pick(['x', 'µ', '"', '\\', '\ud800'])
      .repeat(dice.pick([60, 210, 2049, 20_001, 103_000]));
    if (dice.below(4) === 0) dice.pick(objectsOf(root)).entries.push([text, raw(1)]);
    else dice.pick(slotsOf(root)).put(raw(text));
  },
  'changes an address': (root, dice) => {
    const keyed = objectsOf(root).flatMap(({ entries }) =>
      entries.filter(([key]) => /^[A-Z]+\d+$/.test(key)),
    );
    if (keyed.length > 0) dice.pick(keyed)[0] = dice.pick(ADDRESSES);
  },
  'changes the target of a name': (root, dice) => {
    const targets = slotsOf(root).filter(({ key }) => key === 'target');
    if (targets.length > 0) dice.pick(targets).put(raw(dice.pick(ADDRESSES)));
  },
  'doubles an item': (root, dice) => {
    const lists = slotsOf(root).flatMap(({ node }) =>
      node.type === 'array' && node.items.length > 0 ? [node] : [],
    );
    if (lists.length === 0) return;
    const { items } = dice.pick(lists);
    const times = dice.pick([1, 1, 2, 101]);
    for (let time = 0; time < times; time++) items.push(structuredClone(dice.pick(items)));
  },
  'changes the format': (root, dice) => {
    const formats = slotsOf(root).filter(({ key, node }) => key === 'format' && node.type === 'raw');
    if (formats.length > 0)
      dice.pick(formats).put({ type: 'raw', text: dice.pick(['2', '3', '999', ...NUMBERS]) });
  },
  'puts a value elsewhere': (root, dice) => {
    const slots = slotsOf(root);
    const moved = textOf(dice.pick(slots).node);
    dice.pick(slots).put({ type: 'raw', text: moved });
  },
  'changes words': (root, dice) => {
    const worded = slotsOf(root).filter(({ key }) =>
      /^(?:title|name|symbol|unit|label|note|source|id)$/.test(key),
    );
    if (worded.length > 0) dice.pick(worded).put(raw(dice.pick(WORDS)));
  },
  'changes a content': changeContent,
  'changes another content': changeContent,
  'changes one more content': changeContent,
};

function changeContent(root: Node, dice: Dice): void {
  const contents = slotsOf(root).filter(({ key }) => key === 'content');
  if (contents.length > 0) dice.pick(contents).put(raw(dice.pick(CONTENTS)));
}

const TEXTUAL: Readonly<Record<string, (text: string, dice: Dice) => string>> = {
  'cuts the end off': (text, dice) => text.slice(0, dice.below(text.length)),
  'cuts it in half': (text) => text.slice(0, text.length / 2),
  'drops a piece': (text, dice) => {
    const at = dice.below(text.length);
    return text.slice(0, at) + text.slice(at + 1 + dice.below(40));
  },
  'repeats a piece': (text, dice) => {
    const at = dice.below(text.length);
    return text.slice(0, at + dice.below(60)) + text.slice(at);
  },
  'flips bytes': (text, dice) => {
    const bytes = Buffer.from(text, 'utf8');
    for (let times = 1 + dice.below(3); times > 0; times--) {
      const at = dice.below(bytes.length);
      bytes[at] = (bytes[at] ?? 0) ^ (1 << dice.below(8));
    }
    return bytes.toString('utf8');
  },
  'puts junk in': (text, dice) => {
    const at = dice.below(text.length);
    return text.slice(0, at) + dice.pick([...WORDS, '\\u', '}', ']', ',', '[', '{']) + text.slice(at);
  },
};

/** The text with one to three kinds of damage. */
export function damaged(text: string, dice: Dice): Damaged {
  const done: string[] = [];
  let damagedText = text;
  if (dice.below(5) > 0) {
    const root = nodeOf(JSON.parse(text));
    for (let times = 1 + dice.below(3); times > 0; times--) {
      const [what, change] = dice.pick(Object.entries(STRUCTURAL));
      change(root, dice);
      done.push(what);
    }
    damagedText = textOf(root);
  }
  if (done.length === 0 || dice.below(8) === 0) {
    const [what, change] = dice.pick(Object.entries(TEXTUAL));
    damagedText = change(damagedText, dice);
    done.push(what);
  }
  return { done: done.join(', '), text: damagedText };
}
