/** An equation over numbers for whole columns: the same meaning as compileNumber, a node computed for all samples at once. */

import {
  addLoop,
  BINARY_LOOPS,
  binaryLoopOf,
  chooseLoop,
  compareLoop,
  divideLoop,
  exceedsLoop,
  maxLoop,
  minLoop,
  multiplyLoop,
  negateLoop,
  percentLoop,
  powerLoop,
  subtractLoop,
  UNARY_LOOPS,
  unaryLoopOf,
} from './column-loops.ts';
import type { BinaryLoop, ColumnPool, UnaryLoop } from './column-loops.ts';
import { compileNumber } from './compile-number.ts';
import type { EquationOptions } from './compile-number.ts';
import { FOLDS } from './numeric-functions.ts';
import { isComparison } from './operators.ts';
import type { BinaryNode, CallNode, Node } from './tree.ts';

/** One piece of samples: a column a symbol, of length 1 where it is the same for all; a single NaN for one left out. */
export interface NumberFrame {
  readonly samples: number;
  readonly slots: readonly Float64Array[];
  readonly pool: ColumnPool;
}

export interface NumberColumns {
  /** The values of the piece: a column of the pool's that the caller gives back, or where `isBorrowed` that of a slot. */
  run(frame: NumberFrame): Float64Array;
  readonly isBorrowed: boolean;
}

interface Scope {
  readonly options: EquationOptions;
  readonly symbols: readonly string[];
}

type Part = NumberColumns | undefined;

const inner = (node: Node): Node => (node.type === 'group' ? inner(node.inner) : node);

function constant(value: number): NumberColumns {
  const column = Float64Array.of(value);
  return { isBorrowed: true, run: () => column };
}

const giveBack = ({ isBorrowed }: NumberColumns, column: Float64Array, { pool }: NumberFrame): void => {
  if (!isBorrowed) pool.give(column);
};

function unaryPart(a: Part, loop: UnaryLoop): Part {
  if (!a) return undefined;
  return {
    isBorrowed: false,
    run(frame) {
      const x = a.run(frame);
      const out = frame.pool.take(x.length === 1);
      loop(x, out, x.length === 1 ? 1 : frame.samples);
      giveBack(a, x, frame);
      return out;
    },
  };
}

function binaryPart(a: Part, b: Part, loop: BinaryLoop): Part {
  if (!a || !b) return undefined;
  return {
    isBorrowed: false,
    run(frame) {
      const x = a.run(frame);
      const y = b.run(frame);
      const single = x.length === 1 && y.length === 1;
      const out = frame.pool.take(single);
      loop(x, y, out, single ? 1 : frame.samples);
      giveBack(a, x, frame);
      giveBack(b, y, frame);
      return out;
    },
  };
}

function choicePart(condition: Part, then: Part, otherwise: Part): Part {
  if (!condition || !then || !otherwise) return undefined;
  const copied = (branch: NumberColumns, frame: NumberFrame): Float64Array => {
    const x = branch.run(frame);
    if (!branch.isBorrowed) return x;
    const out = frame.pool.take(x.length === 1);
    out.set(x.length === 1 ? x : x.subarray(0, frame.samples));
    return out;
  };
  return {
    isBorrowed: false,
    run(frame) {
      const chosen = condition.run(frame);
      if (chosen.length === 1) {
        const [value = NaN] = chosen;
        giveBack(condition, chosen, frame);
        if (!Number.isNaN(value)) return copied(value === 0 ? otherwise : then, frame);
        const out = frame.pool.take(true);
        out[0] = NaN;
        return out;
      }
      const x = then.run(frame);
      const y = otherwise.run(frame);
      const out = frame.pool.take();
      chooseLoop(chosen, x, y, out, frame.samples);
      giveBack(condition, chosen, frame);
      giveBack(then, x, frame);
      giveBack(otherwise, y, frame);
      return out;
    },
  };
}

const truth = (holds: boolean): number => (holds ? 1 : 0);

/** AND, OR and XOR two by two; what is none spoils the whole. */
const LOGIC: ReadonlyMap<string, (x: number, y: number) => number> = new Map([
  ['AND', (x: number, y: number) => x * y],
  ['OR', (x: number, y: number) => x + y],
  ['XOR', (x: number, y: number) => x + y],
]);

const LAST_OF_LOGIC: ReadonlyMap<string, (x: number) => number> = new Map([
  ['AND', (x: number) => (Number.isNaN(x) ? NaN : truth(x !== 0))],
  ['OR', (x: number) => (Number.isNaN(x) ? NaN : truth(x !== 0))],
  ['XOR', (x: number) => (Number.isNaN(x) ? NaN : x % 2)],
  ['NOT', (x: number) => (Number.isNaN(x) ? NaN : truth(x === 0))],
]);

const asTruth = unaryLoopOf((x) => (Number.isNaN(x) ? NaN : truth(x !== 0)));

/** The tolerant comparison that conditions are made of: a - b > t MAX(ABS(a); ABS(b)). */
function exceedsPart(node: BinaryNode, scope: Scope): Part {
  const { left, right } = node;
  if (node.operator !== '>' || left.type !== 'binary' || left.operator !== '-') return undefined;
  if (right.type !== 'binary' || right.operator !== '*' || right.left.type !== 'number') return undefined;
  const { right: larger } = right;
  if (larger.type !== 'call' || larger.name !== 'MAX' || larger.args.length !== 2) return undefined;
  const [a, b] = larger.args;
  const same = (sized: Node | undefined, node_: Node): boolean =>
    sized?.type === 'call' && sized.name === 'ABS' && sized.args[0] === node_;
  if (!same(a, left.left) || !same(b, left.right)) return undefined;
  return binaryPart(part(left.left, scope), part(left.right, scope), exceedsLoop(right.left.value));
}

function binary(node: BinaryNode, scope: Scope): Part {
  const { operator, left, right } = node;
  if (left.type === 'text' || right.type === 'text') return wordPart(node, scope);
  const exceeds = exceedsPart(node, scope);
  if (exceeds) return exceeds;
  const a = part(left, scope);
  const b = part(right, scope);
  if (isComparison(operator)) return binaryPart(a, b, compareLoop(operator));
  switch (operator) {
    case '+':
      return binaryPart(a, b, addLoop);
    case '-':
      return binaryPart(a, b, subtractLoop);
    case '*':
      return binaryPart(a, b, multiplyLoop);
    case '/':
      return binaryPart(a, b, divideLoop);
    case '^':
      return binaryPart(a, b, powerLoop);
    default:
      return undefined;
  }
}

/** A text parameter beside one of its words: both stand for the word's place. */
function wordPart({ left, right, operator }: BinaryNode, { symbols, options }: Scope): Part {
  const [named, text] = right.type === 'text' ? [inner(left), right] : [inner(right), left];
  if (named.type !== 'name' || text.type !== 'text') return undefined;
  const slot = symbols.indexOf(named.name);
  const words = options.words?.get(named.name);
  const place = words?.findIndex((word) => word.toLowerCase() === text.value.toLowerCase()) ?? -1;
  if (slot < 0 || place < 0) return undefined;
  const isSame = operator === '=';
  const compare = unaryLoopOf((x) => truth((x === place) === isSame));
  return unaryPart(slotPart(slot), compare);
}

const slotPart = (slot: number): NumberColumns => ({
  isBorrowed: true,
  run: ({ slots }) => slots[slot] as Float64Array,
});

function foldPart({ name, args }: CallNode, parts: readonly Part[]): Part {
  const fold = FOLDS.get(name);
  if (!fold) return undefined;
  const [first, ...others] = parts;
  if (!first) return undefined;
  if (name === 'SUMPRODUCT')
    return others.reduce((product, each) => binaryPart(product, each, multiplyLoop), first as Part);
  if (name === 'MIN') return others.reduce((least, each) => binaryPart(least, each, minLoop), first as Part);
  if (name === 'MAX') return others.reduce((most, each) => binaryPart(most, each, maxLoop), first as Part);
  const { start, step, end } = fold;
  const begun = unaryPart(
    first,
    unaryLoopOf((x) => (Number.isNaN(x) ? NaN : step(start, x))),
  );
  const next = binaryLoopOf((total, x) => (Number.isNaN(total) || Number.isNaN(x) ? NaN : step(total, x)));
  const whole = others.reduce((total, each) => binaryPart(total, each, next), begun);
  return end
    ? unaryPart(
        whole,
        unaryLoopOf((total) => end(total, args.length)),
      )
    : whole;
}

function call(node: CallNode, scope: Scope): Part {
  const { name, args } = node;
  if (name === 'PI') return constant(Math.PI);
  if (name === 'TRUE' || name === 'FALSE') return constant(truth(name === 'TRUE'));
  const parts = args.map((arg) => (arg.type === 'missing' ? constant(0) : part(arg, scope)));
  const [first, second, third = constant(0)] = parts;
  if (name === 'ISBLANK')
    return unaryPart(
      first,
      unaryLoopOf((x) => truth(Number.isNaN(x))),
    );
  if (name === 'IF') return args.length < 4 ? choicePart(first, second, third) : undefined;
  const last = LAST_OF_LOGIC.get(name);
  if (last) {
    const joined = LOGIC.get(name);
    if (!joined) return unaryPart(first, unaryLoopOf(last));
    const loop = binaryLoopOf(joined);
    const truths = parts.map((each) => unaryPart(each, asTruth));
    const [one, ...more] = truths;
    return unaryPart(
      more.reduce((so, each) => binaryPart(so, each, loop), one),
      unaryLoopOf(last),
    );
  }
  if (FOLDS.has(name)) return foldPart(node, parts);
  const unary = args.length === 1 ? UNARY_LOOPS.get(name) : undefined;
  if (unary) return unaryPart(first, unary);
  const loop = args.length === 2 ? BINARY_LOOPS.get(name) : undefined;
  return loop ? binaryPart(first, second, loop) : undefined;
}

const hasNames = (node: Node, found: (name: string) => boolean): boolean => {
  switch (node.type) {
    case 'name':
      return found(node.name);
    case 'group':
      return hasNames(node.inner, found);
    case 'unary':
    case 'percent':
      return hasNames(node.operand, found);
    case 'binary':
      return hasNames(node.left, found) || hasNames(node.right, found);
    case 'call':
      return node.args.some((arg) => hasNames(arg, found));
    default:
      return false;
  }
};

function part(node: Node, scope: Scope): Part {
  const { symbols, options } = scope;
  switch (node.type) {
    case 'number':
    case 'quantity':
    case 'logical':
      return constant(compileNumber(node, symbols, options)([]));
    case 'group':
      return part(node.inner, scope);
    case 'name': {
      const slot = symbols.indexOf(node.name);
      return slot < 0 ? undefined : slotPart(slot);
    }
    case 'unary':
      return node.operator === '-'
        ? unaryPart(part(node.operand, scope), negateLoop)
        : part(node.operand, scope);
    case 'percent':
      return unaryPart(part(node.operand, scope), percentLoop);
    case 'binary':
      return binary(node, scope);
    case 'call':
      return call(node, scope);
    default:
      return undefined;
  }
}

/**
 * Compiles an equation for columns; the slot of a symbol is its place in `symbols`. Undefined where the equation reads
 * lists or functions beyond the numeric ones: then its samples are computed one by one with compileNumber.
 */
export function compileNumberColumns(
  node: Node,
  symbols: readonly string[],
  options: EquationOptions = {},
): NumberColumns | undefined {
  const lists = options.lists ?? [];
  if (hasNames(node, (name) => lists.includes(name))) return undefined;
  return part(node, { symbols, options });
}
