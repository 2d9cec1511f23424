/** A small worksheet in memory: cells typed as text, formulas through parse, inference and evaluation. No engine. */

import { builtinTable } from '../../src/builtins/index.ts';
import type { BuiltinFunction } from '../../src/builtins/index.ts';
import { compileScalar, failure, inferType, isFailure, nodesOf, parse } from '../../src/expression/index.ts';
import type {
  CellNode,
  FunctionTable,
  Inference,
  InferenceContext,
  NameNode,
  Node,
  RangeNode,
  Scalar,
  ScalarType,
  Value,
  ValueType,
} from '../../src/expression/index.ts';
import { PLAIN, generalKind, kindNamed } from '../../src/quantity/index.ts';
import type { Kind } from '../../src/quantity/index.ts';
import { readContent } from '../../src/document/index.ts';

export interface Outcome {
  readonly value: Value;
  readonly inference?: Inference;
}

interface Cell {
  readonly type: ScalarType;
  readonly value: Scalar;
}

const BLANK_VALUE = null;

export class SmallGrid {
  private readonly done = new Map<string, Cell>();
  private readonly open = new Set<string>();

  constructor(
    private readonly cells: ReadonlyMap<string, string>,
    private readonly names: ReadonlyMap<string, string> = new Map(),
    private readonly functions: FunctionTable = builtinTable(),
    private readonly reading: 'metric' | 'inch' = 'metric',
    /** Factor for the numbers typed in a kind, as if the base units were others. */
    private readonly scale: (kind: Kind) => number = () => 1,
  ) {}

  private at(column: number, row: number): Cell {
    const letters = column < 26 ? String.fromCharCode(65 + column) : `A${String.fromCharCode(39 + column)}`;
    const address = `${letters}${row + 1}`;
    const known = this.done.get(address);
    if (known) return known;
    if (this.open.has(address)) throw new Error(`cycle at ${address}`);
    this.open.add(address);
    const cell = this.read(address);
    this.open.delete(address);
    this.done.set(address, cell);
    return cell;
  }

  private read(address: string): Cell {
    const content = readContent(this.cells.get(address) ?? '', 'EUR');
    switch (content.type) {
      case 'empty':
        return { type: { type: 'blank', cell: address }, value: BLANK_VALUE };
      case 'number':
        return { type: { type: 'number', kind: PLAIN, literal: content.si }, value: content.si };
      case 'quantity':
        return { type: { type: 'number', kind: content.kind }, value: content.si * this.scale(content.kind) };
      case 'date':
        return { type: { type: 'number', kind: kindNamed('date') }, value: content.day };
      case 'logical':
        return { type: { type: 'logical' }, value: content.value };
      case 'formula': {
        const { value, inference } = this.compute(content.text);
        const type = inference?.type;
        const single = isFailure(value) || typeof value !== 'object' || value === null;
        return {
          type: type === undefined || type.type === 'grid' ? { type: 'neutral' } : type,
          value: single ? value : failure('#VALUE!', 'several values'),
        };
      }
      default:
        return { type: { type: 'text' }, value: 'text' in content ? content.text : '' };
    }
  }

  private context(): InferenceContext {
    return {
      cellType: (_, column, row) => this.at(column, row).type,
      rangeType: (node) => this.rangeType(node),
      nameType: (_, name) => {
        const meant = this.meant(name);
        if (!meant) return undefined;
        return meant.type === 'range' ? this.rangeType(meant) : this.at(meant.column, meant.row).type;
      },
      functions: this.functions,
      reading: this.reading,
      currency: 'EUR',
    };
  }

  private meant(name: string): CellNode | RangeNode | undefined {
    const target = this.names.get(name);
    const tree = target === undefined ? undefined : parse(`=${target}`).tree;
    return tree?.type === 'cell' || tree?.type === 'range' ? tree : undefined;
  }

  private extent({ start, end }: RangeNode): { rows: number[]; columns: number[] } {
    const span = (a: number, b: number) =>
      Array.from({ length: Math.abs(a - b) + 1 }, (_, i) => Math.min(a, b) + i);
    return { rows: span(start.row, end.row), columns: span(start.column, end.column) };
  }

  private rangeType(node: RangeNode): ValueType & { type: 'grid' } {
    const { rows, columns } = this.extent(node);
    const blanks: string[] = [];
    const types = columns.map((column): ScalarType => {
      const all = rows.map((row) => this.at(column, row).type);
      for (const type of all) if (type.type === 'blank' && type.cell) blanks.push(type.cell);
      const failed = all.find((type) => type.type === 'failed');
      if (failed) return failed;
      const numbers = all.filter((type) => type.type === 'number');
      const first = numbers[0];
      if (!first) return all.find((type) => type.type !== 'blank') ?? { type: 'blank' };
      const telling = numbers.filter(({ literal }) => literal !== 0);
      const { kind } = telling[0] ?? first;
      return telling.every((type) => type.kind.dimension === kind.dimension)
        ? {
            type: 'number',
            kind: telling.every((type) => type.kind === kind) ? kind : generalKind(kind.dimension),
          }
        : { type: 'failed', failure: failure('#UNIT!', 'the column mixes dimensions') };
    });
    return { type: 'grid', columns: types, rows: rows.length, blanks };
  }

  private rangeValue(node: RangeNode): Value {
    const { rows, columns } = this.extent(node);
    return { grid: rows.map((row) => columns.map((column) => this.at(column, row).value)) };
  }

  /** Cells that a function takes as references of one cell. */
  private referenceCells(tree: Node): Set<Node> {
    const found = new Set<Node>();
    for (const node of nodesOf(tree)) {
      if (node.type !== 'call') continue;
      const called: BuiltinFunction | undefined = this.functions.get(node.name);
      if (called?.cellsAsRanges) for (const arg of node.args) if (arg.type === 'cell') found.add(arg);
    }
    return found;
  }

  private valueOf(node: CellNode | RangeNode | NameNode, asRange: boolean): Value {
    if (node.type === 'range') return this.rangeValue(node);
    if (node.type === 'cell') {
      const { value } = this.at(node.column, node.row);
      return asRange ? { grid: [[value]] } : value;
    }
    const meant = this.meant(node.name);
    return meant ? this.valueOf(meant, asRange) : failure('#NAME?', `no name ${node.name}`);
  }

  /** The outcome of a formula; a problem of syntax or a failed inference is its value. */
  compute(text: string): Outcome {
    const parsed = parse(text, { separator: 'both' });
    if ('problem' in parsed && parsed.problem) return { value: failure('#VALUE!', parsed.problem.message) };
    if (!parsed.tree) return { value: failure('#VALUE!', 'no tree') };
    const inference = inferType(parsed.tree, this.context());
    if (inference.failure) return { value: inference.failure, inference };
    const references = this.referenceCells(inference.tree);
    const inputs: Value[] = [];
    const run = compileScalar(inference.tree, {
      functions: this.functions,
      slot: (node) => {
        inputs.push(this.valueOf(node, references.has(node)));
        return inputs.length - 1;
      },
    });
    return { value: run(inputs), inference };
  }
}
