/** Dimensions of a formula before it is computed (F11 to F18): its type, its tree with assumed units, and what to say about it. */

import { DIMENSIONLESS, isUnknownUnit, parseUnit, PLAIN } from '../quantity/index.ts';
import type { Kind } from '../quantity/index.ts';
import type { ArgumentType, Caution } from './function-table.ts';
import { conversionCautions, factorsOf } from './infer-cautions.ts';
import { arrayType, columnsOf, firstFailure, mapColumns, pairColumns } from './infer-columns.ts';
import { nearestNames } from './infer-names.ts';
import { LOGICAL, NEUTRAL, numberOf, operatorType, PLAIN_NUMBER, signType, TEXT } from './infer-operators.ts';
import type { Operand, Outcome } from './infer-operators.ts';
import { assumedNote, inSeconds, spanOf, toldArguments, withUnitRead } from './infer-rewriting.ts';
import type { AssumedNote, Inference, InferenceContext } from './inference-context.ts';
import { print } from './print.ts';
import { cautionsOfSyntax } from './syntax-cautions.ts';
import type { BinaryNode, CallNode, CellNode, ErrorNode, NameNode, Node, QuantityNode } from './tree.ts';
import type { FailedType, NumberType, ScalarType, ValueType } from './type.ts';
import { failure } from './value.ts';

/** A node with what is known of it. */
interface Typed {
  readonly type: ValueType;
  /** The node to evaluate in its place. */
  readonly node: Node;
  /** A number fixed by the formula and by cells, and those cells (F17). */
  readonly constant?: { readonly value: number; readonly cells: readonly (CellNode | NameNode)[] };
}

const failed = (code: ErrorNode['code'], message: string): FailedType => ({
  type: 'failed',
  failure: failure(code, message),
});

const isQuantity = (type: ScalarType): boolean =>
  type.type === 'number' && type.kind.dimension !== DIMENSIONLESS;

/** One pass over one formula. */
/** No quantity has such a power of a base unit: the formula went wrong before. */
const LARGEST_EXPONENT = 99;
const BEYOND = `the unit has a power above ${LARGEST_EXPONENT}`;

function isBeyond(type: ValueType): boolean {
  if (type.type !== 'number') return false;
  const { length, mass, time, temperature, money } = type.kind.dimension;
  return Math.max(...[length, mass, time, temperature, money].map(Math.abs)) > LARGEST_EXPONENT;
}

class Pass {
  readonly cautions = new Map<string, Caution>();
  readonly assumed: AssumedNote[] = [];
  readonly constants = new Set<CellNode | NameNode>();
  private readonly types = new Map<Node, Typed>();

  constructor(private readonly context: InferenceContext) {}

  private caution(caution: Caution | undefined): void {
    if (caution) this.cautions.set(caution.key, caution);
  }

  /** `inChain` is true below a product or quotient, whose top alone looks for double conversions. */
  infer(node: Node, inChain = false): Typed {
    const found = this.inferNode(node, inChain);
    const typed = isBeyond(found.type) ? { type: failed('#UNIT!', BEYOND), node } : found;
    this.types.set(node, typed);
    return typed;
  }

  private inferNode(node: Node, inChain: boolean): Typed {
    switch (node.type) {
      case 'number':
        return {
          type: { type: 'number', kind: PLAIN, literal: node.value },
          node,
          constant: { value: node.value, cells: [] },
        };
      case 'quantity':
        return { type: this.quantityType(node), node };
      case 'text':
        return { type: TEXT, node };
      case 'logical':
        return { type: LOGICAL, node };
      case 'error':
      case 'missing':
        return { type: NEUTRAL, node };
      case 'broken':
        return { type: failed('#VALUE!', 'the formula is unfinished'), node };
      case 'array':
        return { type: arrayType(node, PLAIN), node };
      case 'cell':
        return constantOf(this.context.cellType(node.worksheet, node.column, node.row), node);
      case 'range':
        return { type: this.context.rangeType(node), node };
      case 'name':
        return this.inferName(node);
      case 'group': {
        const inner = this.infer(node.inner, inChain);
        return { ...inner, node: { ...node, inner: inner.node } };
      }
      case 'unary':
      case 'percent':
        return this.inferSign(node);
      case 'binary':
        return this.inferBinary(node, inChain);
      case 'call':
        return this.inferCall(node);
    }
  }

  private quantityType(node: QuantityNode): ValueType {
    const unit = parseUnit(node.unit, this.context.currency);
    if (isUnknownUnit(unit)) {
      const near = unit.near.length > 0 ? `; near ones: ${unit.near.join(', ')}` : '';
      return failed('#UNIT!', `unknown unit ${unit.unknown}${near}`);
    }
    if (node.magnitude.type === 'array') return arrayType(node.magnitude, unit.kind);
    return numberOf(unit.kind);
  }

  private inferName(node: NameNode): Typed {
    const type = this.context.nameType(node.worksheet, node.name);
    if (type) return constantOf(type, node);
    const near = this.context.namesNear?.(node.worksheet, node.name) ?? [];
    const hint = near.length > 0 ? `; near ones: ${near.join(', ')}` : '';
    return { type: failed('#NAME?', `no name ${print(node)}${hint}`), node };
  }

  private inferSign(node: Extract<Node, { type: 'unary' | 'percent' }>): Typed {
    const operand = this.infer(node.operand);
    const operator = node.type === 'percent' ? '%' : node.operator;
    const known = operator === '+' ? operand : this.counted(operand, node.operand, false);
    const type = mapColumns(known.type, (column) =>
      signType(operator, this.operand(column, node.operand, known)),
    );
    const made = { type, node: { ...node, operand: known.node } };
    const { constant } = known;
    if (!constant) return made;
    const value =
      operator === '%' ? constant.value / 100 : operator === '-' ? -constant.value : constant.value;
    return { ...made, constant: { value, cells: constant.cells } };
  }

  /** An empty cell as an operand: among plain numbers 0 with a mark, beside a quantity the error "value missing". */
  private counted(typed: Typed, written: Node, besideQuantity: boolean): Typed {
    const { type } = typed;
    if (type.type === 'grid') {
      for (const blank of type.blanks ?? []) this.caution(emptyCaution(blank));
      return typed;
    }
    if (type.type !== 'blank') return typed;
    const cell = type.cell ?? print(written);
    if (besideQuantity) {
      const message = `value missing: ${cell}`;
      return { type: NEUTRAL, node: { type: 'error', code: '#VALUE!', message, ...spanOf(written) } };
    }
    this.caution(emptyCaution(cell));
    return { type: PLAIN_NUMBER, node: typed.node };
  }

  private operand(type: ScalarType, written: Node, typed: Typed): Operand {
    const unit = type.type === 'number' ? this.unitOf(written, type.kind) : '';
    return {
      type,
      unit,
      get text() {
        return print(written);
      },
      constant: typed.constant?.value,
    };
  }

  /** The unit in which messages show a node: its own, the cell's, or the kind's default. */
  private unitOf(node: Node, kind: Kind): string {
    if (node.type === 'group') return this.unitOf(node.inner, kind);
    if (node.type === 'quantity') return node.unit;
    const own = node.type === 'cell' || node.type === 'name' ? this.context.unitOf?.(node) : undefined;
    if (own !== undefined) return own;
    if (kind.dimension === DIMENSIONLESS) return '';
    return this.context.reading === 'inch' ? kind.inch : kind.metric;
  }

  private inferBinary(node: BinaryNode, inChain: boolean): Typed {
    const chained = node.operator === '*' || node.operator === '/';
    let left = this.infer(node.left, chained);
    let right = this.infer(node.right, chained);
    if (node.operator !== '&' && !comparesText(node, left, right)) {
      const quantities = columnsOf(left.type).some(isQuantity) || columnsOf(right.type).some(isQuantity);
      left = this.counted(left, node.left, quantities);
      right = this.counted(right, node.right, quantities);
    }
    let outcome: Outcome | undefined;
    const type = pairColumns(left.type, right.type, (a, b) => {
      const result = operatorType(
        node.operator,
        this.operand(a, node.left, left),
        this.operand(b, node.right, right),
      );
      this.caution(result.caution);
      if (result.usedConstant) for (const cell of right.constant?.cells ?? []) this.constants.add(cell);
      outcome ??= result;
      return result.type;
    });
    const constant = folded(node, left, right);
    if (chained && !inChain && type.type === 'number') this.lookForConversions(node, type);
    const tree = inSeconds({ ...node, left: left.node, right: right.node }, outcome?.days);
    const literal = constant && constant.cells.length === 0 && type.type === 'number' && type.kind === PLAIN;
    const made: Typed = { type: literal ? { ...type, literal: constant.value } : type, node: tree };
    return constant ? { ...made, constant } : made;
  }

  private lookForConversions(node: BinaryNode, result: NumberType): void {
    const factors = factorsOf(node).flatMap((factor) => {
      const type = this.types.get(factor)?.type;
      return type?.type === 'number' ? [{ node: factor, type, unit: this.unitOf(factor, type.kind) }] : [];
    });
    for (const caution of conversionCautions(factors, result)) this.caution(caution);
  }

  private inferCall(node: CallNode): Typed {
    const called = this.context.functions.get(node.name);
    if (!called) {
      const [near] = nearestNames(node.name, this.context.functions.keys());
      const hint = near === undefined ? '' : `; the nearest is ${near}`;
      return { type: failed('#NAME?', `no function ${node.name}${hint}`), node };
    }
    const [fewest, most] = called.arity;
    const given = node.args.length === 1 && node.args[0]?.type === 'missing' ? 0 : node.args.length;
    if (given < fewest || given > most) {
      return { type: failed('#VALUE!', `${node.name} takes ${countText(fewest, most)}, not ${given}`), node };
    }
    const args = node.args.slice(0, Math.max(given, 0)).map((arg) => this.infer(arg));
    const broken = args.map(({ type }) => firstFailure(type)).find((type) => type !== undefined);
    if (broken) return { type: broken, node };
    const result = called.infer(
      args.map((arg, index) => this.argument(arg, node.args[index] as Node)),
      this.context.reading,
    );
    for (const caution of result.cautions ?? []) this.caution(caution);
    if (result.type.type === 'failed') return { type: result.type, node };
    const read = args.map((arg) => arg.node);
    for (const assumption of result.assumed ?? []) {
      const written = node.args[assumption.argument];
      const arg = args[assumption.argument];
      if (!written || !arg || arg.type.type === 'neutral' || arg.type.type === 'blank') continue;
      read[assumption.argument] = withUnitRead(arg.node, assumption);
      this.assumed.push(assumedNote(written, assumption.unit));
    }
    return { type: result.type, node: { ...node, args: toldArguments(read, most, result.told, node) } };
  }

  /** An argument for a function's own inference; asking for the number of a cell makes the cell a constant (F12). */
  private argument({ type, constant }: Typed, written: Node): ArgumentType {
    const argument = (known: ValueType): ArgumentType => ({
      type: known,
      span: spanOf(written),
      get text() {
        return print(written);
      },
    });
    if (type.type !== 'number' || !constant || constant.cells.length === 0) return argument(type);
    const { constants } = this;
    const watched: NumberType = {
      type: 'number',
      kind: type.kind,
      get literal() {
        for (const cell of constant.cells) constants.add(cell);
        return constant.value;
      },
    };
    return argument(watched);
  }
}

const emptyCaution = (cell: string): Caution => ({
  key: `empty ${cell}`,
  text: `${cell} is empty, counted as 0`,
});

/** Comparing with a text asks nothing of a blank: it is the empty text. */
const comparesText = (node: BinaryNode, left: Typed, right: Typed): boolean =>
  !['+', '-', '*', '/', '^'].includes(node.operator) &&
  (left.type.type === 'text' || right.type.type === 'text');

/** A cell or name: its number is a constant for those who ask, no literal of the formula. */
function constantOf(type: ValueType, node: CellNode | NameNode): Typed {
  if (type.type !== 'number' || type.literal === undefined) return { type, node };
  return { type: numberOf(type.kind), node, constant: { value: type.literal, cells: [node] } };
}

/** Arithmetic of constants: 1/3 as an exponent, 1-1 as a zero. */
function folded(node: BinaryNode, left: Typed, right: Typed): Typed['constant'] {
  if (!left.constant || !right.constant) return undefined;
  const [a, b] = [left.constant.value, right.constant.value];
  const results = new Map([
    ['+', a + b],
    ['-', a - b],
    ['*', a * b],
    ['/', a / b],
    ['^', a ** b],
  ]);
  const value = results.get(node.operator);
  if (value === undefined || !Number.isFinite(value)) return undefined;
  return { value, cells: [...left.constant.cells, ...right.constant.cells] };
}

const noun = (count: number): string => `${count} argument${count === 1 ? '' : 's'}`;

const countText = (fewest: number, most: number): string => {
  if (fewest === most) return fewest === 0 ? 'no arguments' : noun(fewest);
  return Number.isFinite(most) ? `${fewest} to ${noun(most)}` : `at least ${noun(fewest)}`;
};

/** A cell shows one value: several are refused, unless a function gives them on purpose (F26). */
function resultType(type: ValueType, tree: Node, context: InferenceContext): ValueType {
  if (type.type !== 'grid') return type;
  const failing = firstFailure(type);
  if (failing) return failing;
  const [only] = type.columns;
  if (only && type.columns.length === 1 && type.rows === 1) return only;
  const inner = tree.type === 'group' ? tree.inner : tree;
  if (inner.type === 'call' && context.functions.get(inner.name)?.spills) return type;
  return failed('#VALUE!', `${print(tree)} gives several values where one is needed`);
}

/** What the writing alone asks to look at, with the press that writes the other reading (F7, F7a). */
function writtenCautions(node: Node, context: InferenceContext): readonly Caution[] {
  const isName = (name: string): boolean =>
    context.hasName?.(name) ?? context.nameType(undefined, name) !== undefined;
  return cautionsOfSyntax(node, isName).map(({ key, text, from, to, replacement }) =>
    replacement === undefined ? { key, text } : { key, text, from, to, replacement },
  );
}

/**
 * Infers the type of a formula by rules F11 to F18. Failed operands pass on before any function sees them, so that
 * IFERROR catches neither #UNIT! nor #NAME?. Never throws on a tree that parse() gave.
 */
export function inferType(node: Node, context: InferenceContext): Inference {
  const pass = new Pass(context);
  const { type: inferred, node: tree } = pass.infer(node);
  const type = resultType(inferred, node, context);
  const inference = {
    type,
    tree,
    cautions: [...writtenCautions(node, context), ...pass.cautions.values()],
    assumed: pass.assumed,
    constants: [...pass.constants],
  };
  return type.type === 'failed' ? { ...inference, failure: type.failure } : inference;
}
