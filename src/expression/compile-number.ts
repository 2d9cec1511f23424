/** The fast road: an equation over numbers as nested closures, for domain functions. No eval, no boxing. */

import { quantityValue } from './compile-scalar.ts';
import type { FunctionTable } from './function-table.ts';
import { COMPARISON_CLOSURES, UNARY_CLOSURES } from './number-closures.ts';
import type { NumberClosure } from './number-closures.ts';
import { BINARY_FUNCTIONS, FOLDS, powerOrNaN, UNARY_FUNCTIONS } from './numeric-functions.ts';
import { differenceOf, isComparison, sumOf } from './operators.ts';
import type { BinaryNode, CallNode, Node } from './tree.ts';
import { failure } from './value.ts';
import type { Failure, Scalar } from './value.ts';

/** What an equation may use besides numbers and operators. */
export interface EquationOptions {
  /** For calls beyond the built-in numeric ones. */
  readonly functions?: FunctionTable;
  /** Symbols that are lists, in the order of the `lists` argument; usable inside SUM, MIN, MAX, AVERAGE, COUNT, PRODUCT, SUMSQ, SUMPRODUCT and INDEX. */
  readonly lists?: readonly string[];
  /** Allowed words of text symbols: the slot holds the word's place in the list. */
  readonly words?: ReadonlyMap<string, readonly string[]>;
  readonly currency?: string;
}

type Slots = ArrayLike<number>;
type Lists = readonly ArrayLike<number>[];
type Closure = NumberClosure;

/**
 * Numbers by symbol (NaN for one left out; logicals 1 and 0), lists by list symbol. A result that is no finite number
 * means failure: `numberFailure` says which.
 */
export type CompiledNumber = (slots: Slots, lists?: Lists) => number;

interface Scope extends EquationOptions {
  readonly symbols: ReadonlyMap<string, number>;
  readonly divided?: () => void;
}

const NO_LISTS: Lists = Object.freeze([]);

const truth = (holdsTrue: boolean): number => (holdsTrue ? 1 : 0);

function nameOf(node: Node): string | undefined {
  if (node.type === 'group') return nameOf(node.inner);
  return node.type === 'name' ? node.name : undefined;
}

function listsIn(node: Node, scope: Scope, found = new Set<number>()): Set<number> {
  switch (node.type) {
    case 'name': {
      const place = scope.lists?.indexOf(node.name) ?? -1;
      if (place >= 0) found.add(place);
      break;
    }
    case 'group':
      listsIn(node.inner, scope, found);
      break;
    case 'unary':
    case 'percent':
      listsIn(node.operand, scope, found);
      break;
    case 'binary':
      listsIn(node.left, scope, found);
      listsIn(node.right, scope, found);
      break;
    case 'call':
      if (!FOLDS.has(node.name) && node.name !== 'INDEX')
        for (const arg of node.args) listsIn(arg, scope, found);
      break;
    default:
  }
  return found;
}

/** Comparison of a text symbol with one of its words. */
function wordComparison(node: BinaryNode, scope: Scope): Closure | undefined {
  const [named, text] = node.right.type === 'text' ? [node.left, node.right] : [node.right, node.left];
  if (text.type !== 'text') return undefined;
  const name = nameOf(named);
  const words = name === undefined ? undefined : scope.words?.get(name);
  const slot = name === undefined ? undefined : scope.symbols.get(name);
  if (!words || slot === undefined || (node.operator !== '=' && node.operator !== '<>')) {
    throw new Error(`"${text.value}" is compared with something that is no text parameter`);
  }
  const place = words.findIndex((word) => word.toLowerCase() === text.value.toLowerCase());
  if (place < 0) throw new Error(`${name} has no word "${text.value}", only ${words.join(', ')}`);
  return node.operator === '=' ? (s) => truth(s[slot] === place) : (s) => truth(s[slot] !== place);
}

function compileBinary(node: BinaryNode, scope: Scope): Closure {
  const { operator } = node;
  if (isComparison(operator)) {
    const words = wordComparison(node, scope);
    if (words) return words;
    const a = closure(node.left, scope);
    const b = closure(node.right, scope);
    return COMPARISON_CLOSURES[operator](a, b);
  }
  const a = closure(node.left, scope);
  const b = closure(node.right, scope);
  const constant = constantOf(node.right, scope);
  switch (operator) {
    case '+':
      return (s, l, i) => {
        const left = a(s, l, i);
        return sumOf(left, b(s, l, i));
      };
    case '-':
      return (s, l, i) => differenceOf(a(s, l, i), b(s, l, i));
    case '*':
      return compileProduct(node, scope, a, b);
    case '/': {
      if (constant !== undefined && constant !== 0) return (s, l, i) => a(s, l, i) / constant;
      const { divided } = scope;
      return (s, l, i) => {
        const dividend = a(s, l, i);
        const divisor = b(s, l, i);
        if (divisor !== 0) return dividend / divisor;
        divided?.();
        return NaN;
      };
    }
    case '^':
      if (constant === 2) {
        return (s, l, i) => {
          const x = a(s, l, i);
          return x * x;
        };
      }
      return (s, l, i) => {
        const x = a(s, l, i);
        const exponent = b(s, l, i);
        if (x === 0 && exponent < 0) scope.divided?.();
        return powerOrNaN(x, exponent);
      };
    default:
      throw new Error(`the operator ${operator} has no place in an equation of numbers`);
  }
}

/** Products of plain symbols and of a constant are frequent enough to have closures of their own. */
function compileProduct(node: BinaryNode, scope: Scope, a: Closure, b: Closure): Closure {
  const p = slotOf(node.left, scope);
  const q = slotOf(node.right, scope);
  if (p !== undefined && q !== undefined) return (s) => (s[p] as number) * (s[q] as number);
  if (q !== undefined) return (s, l, i) => a(s, l, i) * (s[q] as number);
  const constant = constantOf(node.left, scope);
  if (constant !== undefined) return (s, l, i) => constant * b(s, l, i);
  return (s, l, i) => a(s, l, i) * b(s, l, i);
}

function slotOf(node: Node, scope: Scope): number | undefined {
  return node.type === 'name' ? scope.symbols.get(node.name) : undefined;
}

/** The number of a tree without symbols. */
function constantOf(node: Node, scope: Scope): number | undefined {
  switch (node.type) {
    case 'number':
      return node.value;
    case 'quantity': {
      const value = quantityValue(node, scope.currency);
      return typeof value === 'number' ? value : undefined;
    }
    case 'logical':
      return truth(node.value);
    case 'group':
      return constantOf(node.inner, scope);
    case 'percent': {
      const value = constantOf(node.operand, scope);
      return value === undefined ? undefined : value / 100;
    }
    case 'unary': {
      const value = constantOf(node.operand, scope);
      return value === undefined ? undefined : node.operator === '-' ? -value : value;
    }
    case 'call':
      return node.name === 'PI' && node.args.length === 0 ? Math.PI : undefined;
    default:
      return undefined;
  }
}

function compileFold(node: CallNode, scope: Scope): Closure {
  const fold = FOLDS.get(node.name);
  if (!fold) throw new Error(`${node.name} is no function over lists`);
  const { start, step, end } = fold;
  const product = node.name === 'SUMPRODUCT' && node.args.length > 1;
  const terms = product
    ? [
        {
          parts: node.args.map((arg) => closure(arg, scope)),
          places: [...new Set(node.args.flatMap((arg) => [...listsIn(arg, scope)]))],
        },
      ]
    : node.args.map((arg) => ({ parts: [closure(arg, scope)], places: [...listsIn(arg, scope)] }));
  if (terms.every(({ places }) => places.length === 0) && terms.length === 2 && !end && !product) {
    const [a, b] = terms.map(({ parts }) => parts[0]) as [Closure, Closure];
    return (s, l, i) => step(step(start, a(s, l, i)), b(s, l, i));
  }
  return (s, l, i) => {
    let total = start;
    let count = 0;
    for (const { parts, places } of terms) {
      const single = places.length === 0;
      const length = single ? 1 : (l[places[0] as number]?.length ?? 0);
      for (const place of places) if (l[place]?.length !== length) return NaN;
      for (let k = 0; k < length; k++) {
        let x = 1;
        for (const part of parts) x *= part(s, l, single ? i : k);
        if (Number.isNaN(x)) return NaN;
        total = step(total, x);
        count += 1;
      }
    }
    return end ? end(total, count) : total;
  };
}

function compileLogic(node: CallNode, scope: Scope): Closure | undefined {
  const args = node.args.map((arg) => (arg.type === 'missing' ? () => 0 : closure(arg, scope)));
  /** Counts what is true; a value that is none spoils the whole. */
  const counted =
    (answer: (count: number) => boolean): Closure =>
    (s, l, i) => {
      let count = 0;
      for (const arg of args) {
        const x = arg(s, l, i);
        if (Number.isNaN(x)) return NaN;
        if (x !== 0) count += 1;
      }
      return truth(answer(count));
    };
  switch (node.name) {
    case 'AND':
      return counted((count) => count === args.length);
    case 'OR':
      return counted((count) => count > 0);
    case 'XOR':
      return counted((count) => count % 2 === 1);
    case 'NOT':
      return counted((count) => count === 0);
    case 'IF': {
      const [condition, then, otherwise = () => 0] = args;
      if (!condition || !then) return undefined;
      return (s, l, i) => {
        const chosen = condition(s, l, i);
        if (Number.isNaN(chosen)) return NaN;
        return chosen === 0 ? otherwise(s, l, i) : then(s, l, i);
      };
    }
    default:
      return undefined;
  }
}

function compileCall(node: CallNode, scope: Scope): Closure {
  const { name, args } = node;
  const [first, second] = args;
  if (name === 'PI') return () => Math.PI;
  if (name === 'TRUE' || name === 'FALSE') return () => truth(name === 'TRUE');
  if (name === 'ISBLANK' && first) {
    const a = closure(first, scope);
    return (s, l, i) => truth(Number.isNaN(a(s, l, i)));
  }
  if (name === 'INDEX' && first && second) {
    const place = scope.lists?.indexOf(nameOf(first) ?? '') ?? -1;
    const at = closure(second, scope);
    if (place >= 0) return (s, l, i) => l[place]?.[Math.trunc(at(s, l, i)) - 1] ?? NaN;
  }
  const logic = compileLogic(node, scope);
  if (logic) return logic;
  if (FOLDS.has(name)) return compileFold(node, scope);
  const unary = args.length === 1 ? UNARY_FUNCTIONS.get(name) : undefined;
  if (unary && first) {
    const a = closure(first, scope);
    return UNARY_CLOSURES.get(name)?.(a) ?? ((s, l, i) => unary(a(s, l, i)));
  }
  const binary = args.length === 2 ? BINARY_FUNCTIONS.get(name) : undefined;
  if (binary && first && second) {
    const a = closure(first, scope);
    const b = closure(second, scope);
    return (s, l, i) => binary(a(s, l, i), b(s, l, i));
  }
  return compileTableCall(node, scope);
}

/** Any other function of the table, its arguments boxed. */
function compileTableCall(node: CallNode, scope: Scope): Closure {
  const called = scope.functions?.get(node.name);
  if (!called) throw new Error(`no function ${node.name} with ${node.args.length} arguments in an equation`);
  const boxes = node.args.map((arg): ((s: Slots, l: Lists, i: number) => Scalar) => {
    if (arg.type === 'text') return () => arg.value;
    if (arg.type === 'missing') return () => null;
    const name = nameOf(arg);
    const words = name === undefined ? undefined : scope.words?.get(name);
    const slot = name === undefined ? undefined : scope.symbols.get(name);
    if (words && slot !== undefined) return (s) => words[s[slot] ?? -1] ?? null;
    const number = closure(arg, scope);
    return (s, l, i) => {
      const x = number(s, l, i);
      return Number.isFinite(x) ? x : slot !== undefined ? null : failure('#NUM!', 'no number results');
    };
  });
  return (s, l, i) => {
    const value = called.evaluateLazily
      ? called.evaluateLazily(
          boxes.map((box) => () => box(s, l, i)),
          {},
        )
      : called.evaluate(
          boxes.map((box) => box(s, l, i)),
          {},
        );
    return typeof value === 'number' ? value : typeof value === 'boolean' ? truth(value) : NaN;
  };
}

function closure(node: Node, scope: Scope): Closure {
  const constant = constantOf(node, scope);
  if (constant !== undefined) return () => constant;
  switch (node.type) {
    case 'group':
      return closure(node.inner, scope);
    case 'name': {
      const list = scope.lists?.indexOf(node.name) ?? -1;
      if (list >= 0) return (_, l, i) => l[list]?.[i] ?? NaN;
      const slot = scope.symbols.get(node.name);
      if (slot === undefined) throw new Error(`the equation has no symbol ${node.name}`);
      return (s) => s[slot] as number;
    }
    case 'unary': {
      const a = closure(node.operand, scope);
      return node.operator === '-' ? (s, l, i) => -a(s, l, i) : a;
    }
    case 'percent': {
      const a = closure(node.operand, scope);
      return (s, l, i) => a(s, l, i) / 100;
    }
    case 'binary':
      return compileBinary(node, scope);
    case 'call':
      return compileCall(node, scope);
    default:
      throw new Error(`${node.type} has no place in an equation of numbers`);
  }
}

function scopeOf(symbols: readonly string[], options: EquationOptions, divided?: () => void): Scope {
  const places = new Map(symbols.map((symbol, slot) => [symbol, slot]));
  return divided ? { ...options, symbols: places, divided } : { ...options, symbols: places };
}

/**
 * Compiles an equation; the slot of a symbol is its place in `symbols`. IF computes only the branch it takes. INT,
 * FLOOR and CEILING follow rule E2; ISBLANK asks whether a symbol was left out (NaN). Throws on unknown symbols,
 * functions and words, which are errors of the definition.
 */
export function compileNumber(
  node: Node,
  symbols: readonly string[],
  options: EquationOptions = {},
): CompiledNumber {
  const run = closure(node, scopeOf(symbols, options));
  return (slots, lists = NO_LISTS) => run(slots, lists, 0);
}

/** Why an equation gave no finite number: computed again with an eye on divisors. */
export function numberFailure(
  node: Node,
  symbols: readonly string[],
  options: EquationOptions,
  slots: Slots,
  lists: Lists = NO_LISTS,
): Failure {
  let divided = false;
  const run = closure(
    node,
    scopeOf(symbols, options, () => {
      divided = true;
    }),
  );
  const value = run(slots, lists, 0);
  if (divided) return failure('#DIV/0!', 'division by zero');
  return failure(
    '#NUM!',
    Number.isNaN(value) ? 'no number results from these values' : 'the result is too large',
  );
}
