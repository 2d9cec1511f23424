/** What a sketch is: parameters in coherent SI and a pure function that turns them into a drawing or a refusal in words. */

import { describeKind, kindNamed } from '../../quantity/index.ts';
import type { Drawing } from './drawing.ts';

export interface SketchParameter {
  readonly key: string;
  /** As names are written: ae, kappa_r. */
  readonly symbol: string;
  readonly words: string;
  /** Quantity kind. */
  readonly kind: string;
  readonly optional?: true;
  /** Several values in order. */
  readonly list?: true;
  /** What is allowed; default: above 0. */
  readonly range?: 'above 0' | 'from 0' | 'any';
}

export type SketchValue = number | readonly number[];
export type SketchValues = ReadonlyMap<string, SketchValue>;

/** Words for a value in coherent SI of a kind, in the unit the reader uses. */
export type Say = (value: number, kind: string) => string;

export interface SketchRefusal {
  /** Key of the parameter. */
  readonly parameter: string;
  readonly refused: string;
}

export interface Sketch {
  readonly key: string;
  readonly title: string;
  /** When it is worth drawing, in one line. */
  readonly purpose: string;
  readonly parameters: readonly SketchParameter[];
  draw(values: SketchValues, say: Say): Drawing | SketchRefusal;
}

export const isRefused = (answer: Drawing | SketchRefusal): answer is SketchRefusal => 'refused' in answer;

/** The value of a parameter that has been checked to be there. */
export function valueOf(values: SketchValues, key: string): number {
  const value = values.get(key);
  if (typeof value !== 'number') throw new RangeError(`the sketch has no number ${key}`);
  return value;
}

/** The value of an optional parameter. */
export function valueIfAny(values: SketchValues, key: string): number | undefined {
  const value = values.get(key);
  return typeof value === 'number' ? value : undefined;
}

/** The values of a list; empty where there are none. */
export function listOf(values: SketchValues, key: string): readonly number[] {
  const value = values.get(key);
  return value === undefined ? [] : typeof value === 'number' ? [value] : value;
}

export const refuse = (parameter: string, refused: string): SketchRefusal => ({ parameter, refused });

function complaint({ kind, words, range = 'above 0' }: SketchParameter, value: number): string | undefined {
  if (!Number.isFinite(value)) return `${words}: not a number`;
  if (range === 'above 0' && value <= 0)
    return `${words}: ${describeKind(kindNamed(kind))} above 0 is needed`;
  if (range === 'from 0' && value < 0) return `${words}: must not be below 0`;
  return undefined;
}

/** The drawing of a sketch, or which parameter is missing or can not be drawn. */
export function drawSketch(sketch: Sketch, values: SketchValues, say: Say): Drawing | SketchRefusal {
  for (const parameter of sketch.parameters) {
    const given = listOf(values, parameter.key);
    if (given.length === 0 && !parameter.optional)
      return refuse(parameter.key, `${parameter.words}: a value is missing`);
    if (given.length > 1 && !parameter.list)
      return refuse(parameter.key, `${parameter.words}: one value, not ${given.length}`);
    for (const value of given) {
      const words = complaint(parameter, value);
      if (words !== undefined) return refuse(parameter.key, words);
    }
  }
  return sketch.draw(values, say);
}
