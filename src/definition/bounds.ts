/** The ranges of a parameter: compiled limits, the check, and its words. */

import {
  compileNumber,
  nodesOf,
  type CompiledNumber,
  type EquationOptions,
  type Node,
  type UnitSystem,
} from '../expression/index.ts';
import { isUnknownUnit, kindNamed, parseUnit, toSI } from '../quantity/index.ts';
import { equationTree, rescaledTree, TOLERANCE, type Rescale } from './equation.ts';
import type { Bounds, Parameter } from './function-definition.ts';
import { spoken, unitOfParameter, valueWords } from './words.ts';

interface CompiledLimit {
  /** Absent where the limit is the same for all calls: then `value` needs no slots. */
  readonly tree: Node | undefined;
  readonly value: CompiledNumber;
  /** "the cutter diameter " where the limit is another parameter, else empty. */
  readonly of: string;
}

export interface CompiledBounds {
  /**
   * The value itself, or moved onto a limit that it passes only by rounding; or the words of what is wrong. `value` is
   * coherent SI.
   */
  check(value: number, slots: ArrayLike<number>, system?: UnitSystem): number | string;
  /** The ends as numbers, or as trees where they rest on other parameters. */
  readonly bottom: number | Node;
  readonly top: number | Node;
}

/** How a definition's texts are compiled: its symbols, and on wish other base units. */
export interface Compiling {
  readonly symbols: readonly string[];
  readonly options: EquationOptions;
  readonly parameters: readonly Parameter[];
  readonly rescale?: Rescale;
}

/** A tree made ready for these base units. */
export function readied(tree: Node, { rescale }: Compiling): Node {
  return rescale ? rescaledTree(tree, rescale) : tree;
}

/** Where a range has one end only, the other is this many display units. */
const FAR = '1000000000';

function farLimit(parameter: Parameter, { rescale }: Compiling): number {
  const unit = parseUnit(unitOfParameter(parameter) === '%' ? '1' : (parameter.metric ?? '1'));
  if (isUnknownUnit(unit)) throw new Error(`${parameter.name}: unknown unit ${parameter.metric}`);
  const far = toSI(FAR, unit);
  return rescale ? rescale(far, kindNamed(parameter.kind).dimension) : far;
}

function compiledLimit(text: string, compiling: Compiling): CompiledLimit {
  const tree = equationTree(text);
  const named =
    tree.type === 'name' ? compiling.parameters.find(({ symbol }) => symbol === tree.name) : undefined;
  const value = compileNumber(readied(tree, compiling), compiling.symbols, compiling.options);
  const constant = [...nodesOf(tree)].every((node) => node.type !== 'name');
  if (!constant)
    return { tree: readied(tree, compiling), value, of: named ? `the ${spoken(named.name)} ` : '' };
  const fixed = value([]);
  return { tree: undefined, value: () => fixed, of: '' };
}

/** A limit that rests on a parameter left out is none. */
function known(limit: CompiledLimit | undefined, slots: ArrayLike<number>, otherwise: number): number {
  const value = limit?.value(slots) ?? otherwise;
  return Number.isNaN(value) ? otherwise : value;
}

/** The hard range of a parameter. */
export function compiledHard(parameter: Parameter, compiling: Compiling): CompiledBounds {
  const bounds: Bounds = parameter.hard ?? {};
  const limit = (text: string | undefined): CompiledLimit | undefined =>
    text === undefined ? undefined : compiledLimit(text, compiling);
  const [above, least, below, most] = [bounds.above, bounds.least, bounds.below, bounds.most].map(limit);
  const numeric = !['text', 'logical', 'any number'].includes(parameter.kind);
  const far = numeric ? farLimit(parameter, compiling) : Number.MAX_VALUE;
  const lower = least ?? above;
  const upper = most ?? below;
  return {
    bottom: lower?.tree ?? known(lower, [], -far),
    top: upper?.tree ?? known(upper, [], far),
    check(value, slots, system) {
      const top = known(upper, slots, far);
      const bottom = known(lower, slots, -far);
      if (value > bottom && value < top) return value;
      const words = (si: number): string => valueWords(si, unitOfParameter(parameter, system));
      const room = (limited: number): number => TOLERANCE * Math.max(Math.abs(value), Math.abs(limited));
      const relation = (wording: string, end: CompiledLimit | undefined, limited: number): string => {
        const range = end?.of || !lower || !upper ? '' : ` (allowed ${words(bottom)} to ${words(top)})`;
        return `${words(value)} ${wording} ${end?.of ?? ''}${words(limited)}${range}`;
      };
      if (value <= bottom) {
        if (above) return relation('must be more than', above, bottom);
        return bottom - value <= room(bottom)
          ? bottom
          : relation('is below the least allowed,', least, bottom);
      }
      if (below) return relation('must be less than', below, top);
      return value - top <= room(top) ? top : relation('is above the largest allowed,', most, top);
    },
  };
}

/** The usual range of a parameter: words where a value lies outside. */
export function compiledUsual(
  parameter: Parameter,
  compiling: Compiling,
): ((value: number, slots: ArrayLike<number>, system?: UnitSystem) => string | undefined) | undefined {
  const { usual } = parameter;
  if (!usual) return undefined;
  const from = compiledLimit(usual.from, compiling);
  const to = compiledLimit(usual.to, compiling);
  return (value, slots, system) => {
    const low = from.value(slots);
    const high = to.value(slots);
    const room = TOLERANCE * Math.abs(value);
    if (value >= low - room && value <= high + room) return undefined;
    const words = (si: number): string => valueWords(si, unitOfParameter(parameter, system));
    return `${words(value)} is unusual: usually ${words(low)} to ${words(high)}`;
  };
}
