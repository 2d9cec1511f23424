/** The sketch of a domain function's call: from a worked example's texts, or from a formula in a cell with the values and cells behind it. */

import type { CellAddress } from '../../calculation/index.ts';
import type { Example, FunctionDefinition } from '../../definition/index.ts';
import { cellAt, findWorksheet, readContent } from '../../document/index.ts';
import type { CellPlace } from '../../document/index.ts';
import { callsOf, parse, type CallNode, type Node } from '../../expression/index.ts';
import { isUnknownUnit, parseUnit, toSI } from '../../quantity/index.ts';
import { written } from '../destinations.ts';
import type { Session } from '../session.ts';
import { FUNCTION_SKETCHES, type FunctionSketch } from './function-sketches.table.ts';
import type { Sketch, SketchValue } from './sketch.ts';
import { sketchOf } from './sketches.ts';

type FunctionParameter = FunctionDefinition['parameters'][number];

/** What stands for one argument: its value, and its cells where it is nothing but cells. */
interface Argument {
  readonly value?: SketchValue | string;
  readonly places?: readonly CellPlace[];
}

export interface CallSketch {
  readonly sketch: Sketch;
  readonly values: ReadonlyMap<string, SketchValue>;
  /** Cells of the parameters that are nothing but cells. */
  readonly places: ReadonlyMap<string, readonly CellPlace[]>;
}

/** A number in coherent SI as it would be typed for a parameter: a plain one is read in the parameter's metric or inch unit. */
function numberIn(text: string, unit: string | undefined): number | undefined {
  const content = readContent(text);
  if (content.type === 'quantity') return content.si;
  if (content.type !== 'number') return undefined;
  const read = unit === undefined ? undefined : parseUnit(unit);
  return read && !isUnknownUnit(read) ? toSI(content.digits, read) : content.si;
}

/** Reads `20 mm`, `{40;60} mm`, `"down"`; undefined for anything worked out. */
export function literal(text: string, unit: string | undefined): SketchValue | string | undefined {
  const trimmed = text.trim();
  const [, quoted] = /^"(.*)"$/.exec(trimmed) ?? [];
  if (quoted !== undefined) return quoted;
  const [, inner, after = ''] = /^\{([^}]*)\}\s*(.*)$/.exec(trimmed) ?? [];
  if (inner === undefined) return numberIn(trimmed, unit);
  const numbers = inner.split(/[;|]/).map((each) => numberIn(`${each.trim()} ${after}`.trim(), unit));
  return numbers.every((each) => each !== undefined) ? numbers : undefined;
}

const defaultOf = ({ default: preset }: FunctionParameter): string | undefined =>
  preset && 'value' in preset ? preset.value : undefined;

/** The sketch with what its parameters take; undefined where a text argument names none. */
function assembled(
  row: FunctionSketch,
  definition: FunctionDefinition,
  argument: (parameter: FunctionParameter, index: number) => Argument,
  result: Argument,
): CallSketch | undefined {
  const known = new Map<string, Argument>([['=', result]]);
  definition.parameters.forEach((parameter, k) => known.set(parameter.symbol, argument(parameter, k)));
  const { sketch: choice } = row;
  const word = typeof choice === 'string' ? undefined : known.get(choice.by)?.value;
  const key = typeof choice === 'string' ? choice : typeof word === 'string' ? choice.of[word] : undefined;
  const sketch = key === undefined ? undefined : sketchOf(key);
  if (!sketch) return undefined;
  const values = new Map<string, SketchValue>();
  const places = new Map<string, readonly CellPlace[]>();
  for (const [parameter, symbol] of Object.entries(row.takes)) {
    const given = known.get(symbol);
    if (given?.value !== undefined && typeof given.value !== 'string') values.set(parameter, given.value);
    if (given?.places) places.set(parameter, given.places);
  }
  return { sketch, values, places };
}

/** The sketch of a worked example; undefined where none illustrates the function. */
export function exampleSketch(definition: FunctionDefinition, example: Example): CallSketch | undefined {
  const row = FUNCTION_SKETCHES.get(definition.name);
  if (!row) return undefined;
  const read = (text: string | undefined, unit: string | undefined): Argument => {
    const value = text === undefined ? undefined : literal(text, unit);
    return value === undefined ? {} : { value };
  };
  const gives = typeof example.gives === 'string' ? example.gives : undefined;
  return assembled(
    row,
    definition,
    (parameter, k) => read(example.given[k] || defaultOf(parameter), parameter.metric),
    read(gives, undefined),
  );
}

/** The cells a reference means, when it is nothing but a reference. */
function placesOf(
  session: Session,
  home: string,
  text: string,
  node: Node,
): readonly CellPlace[] | undefined {
  if (node.type !== 'cell' && node.type !== 'range' && node.type !== 'name') return undefined;
  const found = written(session.notebook, home, text);
  if (!found) return undefined;
  const { worksheet, block } = found;
  return Array.from({ length: block.rows * block.columns }, (_, k) => ({
    worksheet,
    row: block.row + Math.floor(k / block.columns),
    column: block.column + (k % block.columns),
  }));
}

function fromCells(session: Session, places: readonly CellPlace[]): Argument {
  const found = places.map(({ worksheet, row, column }) => session.results.at(worksheet, row, column)?.value);
  const [only] = found;
  if (found.length === 1 && (typeof only === 'number' || typeof only === 'string'))
    return { value: only, places };
  const numbers = found.filter((each) => typeof each === 'number');
  return numbers.length === found.length ? { value: numbers, places } : { places };
}

/** The first call in a cell that a sketch illustrates, with the values it has now. */
export function callSketch(
  session: Session,
  { worksheet, row, column }: CellAddress,
): CallSketch | undefined {
  const home = findWorksheet(session.notebook, worksheet);
  const content = (home && cellAt(home, row, column)?.content) ?? '';
  const tree = content.startsWith('=') ? parse(content).tree : undefined;
  if (!tree) return undefined;
  for (const call of callsOf(tree)) {
    const illustrated = FUNCTION_SKETCHES.get(call.name);
    const definition = session.catalogue?.domain.find(({ name }) => name === call.name);
    if (!illustrated || !definition) continue;
    const unit = session.notebook.reading;
    const argument = (parameter: FunctionParameter, k: number): Argument =>
      argumentOf(session, worksheet, content, call, parameter, k, unit);
    const own = { worksheet, row, column };
    const result = tree === call ? fromCells(session, [own]) : {};
    const made = assembled(illustrated, definition, argument, result);
    if (made) return made;
  }
  return undefined;
}

function argumentOf(
  session: Session,
  home: string,
  content: string,
  call: CallNode,
  parameter: FunctionParameter,
  index: number,
  reading: 'metric' | 'inch',
): Argument {
  const node = call.args[index];
  const text = node && node.type !== 'missing' ? content.slice(node.from, node.to) : defaultOf(parameter);
  if (text === undefined) return {};
  const places = node && placesOf(session, home, text, node);
  if (places) return fromCells(session, places);
  const value = literal(text, reading === 'metric' ? parameter.metric : parameter.inch);
  return value === undefined ? {} : { value };
}
