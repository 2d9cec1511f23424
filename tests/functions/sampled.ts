/** Arguments of a definition by seeded chance: inside the usual ranges, or anywhere the hard ranges allow. */

import { equationTree, type FunctionDefinition, type Parameter } from '../../src/definition/index.ts';
import { compileNumber, type Value } from '../../src/expression/index.ts';
import { isUnknownUnit, parseUnit } from '../../src/quantity/index.ts';

/** Numbers in [0, 1), the same for the same seed (mulberry32). */
export function chance(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const scaleOf = ({ metric }: Parameter): number => {
  const unit = parseUnit(metric ?? '1');
  if (isUnknownUnit(unit)) throw new Error(metric);
  return unit.scale;
};

function between(low: number, high: number, next: () => number): number {
  const logarithmic = low > 0 && high / low > 20;
  return logarithmic ? low * (high / low) ** next() : low + (high - low) * next();
}

export type Width = 'usual' | 'hard';

/** One set of arguments in coherent SI; some optional ones are left out. */
export function sampledArguments(definition: FunctionDefinition, next: () => number, width: Width): Value[] {
  const known = new Map<string, number>();
  const limit = (text: string | undefined): number | undefined => {
    if (text === undefined) return undefined;
    const symbols = [...known.keys()];
    try {
      return compileNumber(equationTree(text), symbols)([...known.values()]);
    } catch {
      return undefined;
    }
  };
  const number = (parameter: Parameter): number => {
    const { hard = {}, usual, whole } = parameter;
    const scale = scaleOf(parameter);
    const share = parameter.kind === 'share' || parameter.kind === 'ratio';
    const lowest = limit(hard.above ?? hard.least);
    const highest = limit(hard.below ?? hard.most);
    let low = limit(usual?.from) ?? lowest ?? -100 * scale;
    let high = limit(usual?.to) ?? highest ?? (share ? 10 : 100 * scale);
    if (width === 'hard') {
      low = lowest ?? low - 10 * Math.abs(low);
      high = highest ?? 100 * high;
      if (low <= 0 && high > 0 && next() < 0.5) low = Math.max(low, high * 1e-6);
    }
    if (low === 0 && (hard.above !== undefined || hard.least === undefined)) low = high / 1000;
    const value = between(low, high, next);
    return whole ? Math.max(1, Math.round(value)) : value;
  };
  return definition.parameters.map((parameter): Value => {
    const { symbol, kind, words, list, default: standard } = parameter;
    if (standard && next() < 0.4) return null;
    if (list) {
      const items = Array.from({ length: next() < 0.1 ? 3 : 4 }, () => number(parameter));
      const order = next();
      // Rising, falling, as they come, or all alike.
      if (order < 0.5) items.sort((a, b) => a - b);
      else if (order < 0.75) items.sort((a, b) => b - a);
      return { grid: [order > 0.9 ? items.map(() => items[0] ?? 0) : items] };
    }
    if (kind === 'text') return words?.[Math.floor(next() * words.length)] ?? '42CrMo4';
    if (kind === 'logical') return next() < 0.5;
    const value = number(parameter);
    known.set(symbol, value);
    return value;
  });
}
