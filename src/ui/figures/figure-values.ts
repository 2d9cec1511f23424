/** Values of a sketch's parameters, read from the cells it names; a cell that does not fit is refused in words. */

import type { CellPlace, FigureContent, Notebook } from '../../document/index.ts';
import { cellAt, findWorksheet } from '../../document/index.ts';
import { addressText, titleText } from '../../expression/index.ts';
import { describeKind, isKindName, kindNamed } from '../../quantity/index.ts';
import type { KnownResult, Results } from '../results.ts';
import { contentOf } from '../value-text.ts';
import {
  refuse,
  type Sketch,
  type SketchParameter,
  type SketchRefusal,
  type SketchValue,
  type SketchValues,
} from './sketch.ts';

export type SketchContent = Extract<FigureContent, { readonly type: 'sketch' }>;

/** "B7", with its worksheet where the notebook has several: Machine.B7. */
export function placeText(notebook: Notebook, { worksheet, row, column }: CellPlace): string {
  const address = addressText(column, row);
  const home = findWorksheet(notebook, worksheet);
  return !home || notebook.worksheets.length === 1 ? address : `${titleText(home.title)}.${address}`;
}

/** What a cell holds: its result, and before the calculator has answered what is typed in it. */
export function knownAt(notebook: Notebook, results: Results, place: CellPlace): KnownResult | undefined {
  const result = results.at(place.worksheet, place.row, place.column);
  if (result) return result;
  const home = findWorksheet(notebook, place.worksheet);
  const cell = home && cellAt(home, place.row, place.column);
  const content = cell && contentOf(cell, notebook);
  if (content?.type !== 'quantity' && content?.type !== 'number') return undefined;
  const unit = content.type === 'quantity' ? (cell?.unit ?? content.unitText) : '';
  return { value: content.si, kind: content.kind.name, unit, cautions: [] };
}

/** Whether a result is a number of the dimension a parameter needs. */
export function fits(result: KnownResult | undefined, { kind }: Pick<SketchParameter, 'kind'>): boolean {
  return (
    typeof result?.value === 'number' &&
    isKindName(result.kind) &&
    kindNamed(result.kind).dimension === kindNamed(kind).dimension
  );
}

function complaint(parameter: SketchParameter, result: KnownResult | undefined): string {
  if (result?.error) return `${result.error.code} ${result.error.message}`;
  if (typeof result?.value !== 'number') return 'no number stands there';
  const found = isKindName(result.kind) ? describeKind(kindNamed(result.kind)) : result.kind;
  return `${found} stands there, ${describeKind(kindNamed(parameter.kind))} is needed`;
}

/** The values, or the first parameter whose cell has none that fits. */
export function valuesOf(
  notebook: Notebook,
  results: Results,
  sketch: Sketch,
  content: SketchContent,
): SketchValues | SketchRefusal {
  const values = new Map<string, SketchValue>();
  for (const parameter of sketch.parameters) {
    const numbers: number[] = [];
    for (const { parameter: key, place } of content.values) {
      if (key !== parameter.key) continue;
      const result = knownAt(notebook, results, place);
      if (!fits(result, parameter) || typeof result?.value !== 'number')
        return refuse(
          parameter.key,
          `${parameter.words} (${placeText(notebook, place)}): ${complaint(parameter, result)}`,
        );
      numbers.push(result.value);
    }
    const [first] = numbers;
    if (first !== undefined) values.set(parameter.key, parameter.list ? numbers : first);
  }
  return values;
}

export const isValues = (answer: SketchValues | SketchRefusal): answer is SketchValues =>
  answer instanceof Map;
