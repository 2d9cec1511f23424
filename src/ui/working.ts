/** The equation behind a cell, as typeset text: in symbols, and with the values put in. */

import type { Explanation } from '../calculation/index.ts';
import type { FunctionDefinition } from '../definition/index.ts';
import type { Cell } from '../document/index.ts';
import { callsOf, parse, tokenize, typeset } from '../expression/index.ts';
import type { Node } from '../expression/index.ts';
import type { Session } from './session.ts';
import { decimalMark } from './number-locale.ts';
import { beforeRest, putIn, valueText } from './put-in.ts';

export interface Working {
  /** MathML text. */
  readonly equation?: string;
  readonly substituted?: string;
  /** Domain functions that the formula calls, in the order of their calls. */
  readonly definitions: readonly FunctionDefinition[];
}

/** What a formula's working is told from: the selected cell unless others are given. */
export interface Explained {
  readonly cell: Cell | undefined;
  readonly explanation: Explanation | undefined;
}

/** Undefined for a cell without a formula. */
export function workingOf(session: Session, explained: Explained = session): Working | undefined {
  const { cell } = explained;
  if (!cell?.content.startsWith('=')) return undefined;
  const { tree } = parse(cell.content);
  if (!tree) return { definitions: [] };
  const domain = session.catalogue?.domain ?? [];
  const called = new Set(callsOf(tree).map((call) => call.name));
  const definitions = domain.filter((each) => called.has(each.name));
  const single = tree.type === 'call' ? domain.find((each) => each.name === tree.name) : undefined;
  if (single && !('equation' in single)) {
    // A table or an iteration has no equation: its call says what is asked of it.
    const put = withValues(session, cell);
    return { definitions, equation: set(tree), ...(put && { substituted: put }) };
  }
  if (single) {
    const equation = definitionEquation(single);
    const put = equationWithValues(session, explained, single, tree);
    return { definitions, ...(equation && { equation }), ...(put && { substituted: put }) };
  }
  const substituted = withValues(session, cell);
  return { definitions, equation: set(tree), ...(substituted && { substituted }) };
}

const set = (tree: Node): string => typeset(tree, { decimalMark: decimalMark() });
const equals = (left: string, right: string): string =>
  `<math display="block"><mrow>${inner(left)}<mo>=</mo>${inner(right)}</mrow></math>`;
const inner = (markup: string): string => markup.replace(/^\s*<math[^>]*>/, '').replace(/<\/math>\s*$/, '');

function symbolMarkup(symbol: string): string {
  const { tree } = parse(`=${symbol}`);
  return tree ? set(tree) : `<mi>${symbol.replaceAll(/[<&>]/g, '')}</mi>`;
}

/** Result symbol = equation, for a definition with an equation. */
export function definitionEquation(definition: FunctionDefinition): string | undefined {
  if (!('equation' in definition)) return undefined;
  const { tree } = parse(`=${definition.equation}`);
  return tree && equals(symbolMarkup(definition.result.symbol), set(tree));
}

/** Steps of a definition, each as an equation. */
export function stepEquations(definition: FunctionDefinition): readonly string[] {
  return (definition.steps ?? []).flatMap(({ symbol, equation }) => {
    const { tree } = parse(`=${equation}`);
    return tree ? [equals(symbolMarkup(symbol), set(tree))] : [];
  });
}

/** Each reference replaced by its value with its unit, in the text. */
function withValues(session: Session, cell: Cell): string | undefined {
  const put = putIn(session, cell);
  return put === undefined ? undefined : typesetText(put);
}

/** The definition's equation with the call's arguments and recorded steps in place of its symbols. */
function equationWithValues(
  session: Session,
  explained: Explained,
  definition: FunctionDefinition,
  call: Node,
): string | undefined {
  if (!('equation' in definition) || call.type !== 'call') return undefined;
  const { explanation } = explained;
  const content = explained.cell?.content ?? '';
  const operands = new Map((explanation?.operands ?? []).map((each) => [each.text, each]));
  const values = new Map<string, string>();
  definition.parameters.forEach((parameter, k) => {
    const argument = call.args[k];
    const text = argument && argument.type !== 'missing' ? content.slice(argument.from, argument.to) : '';
    const operand = operands.get(text);
    const known = operand
      ? valueText(session, operand.value, operand.unit)
      : literal(session, explanation, parameter, argument, text);
    const fallback = parameter.default && 'value' in parameter.default ? parameter.default.value : undefined;
    const value = known ?? (text === '' ? fallback : undefined);
    if (value !== undefined) values.set(parameter.symbol, value);
  });
  for (const { function: name, steps } of explanation?.calls ?? [])
    if (name === definition.name)
      for (const step of steps) {
        const value = valueText(session, step.value, step.unit);
        if (value !== undefined) values.set(step.symbol, value);
      }
  const put = replaced(`=${definition.equation}`, (text) => values.get(text));
  return put === undefined ? undefined : typesetText(put);
}

function literal(
  session: Session,
  explanation: Explanation | undefined,
  parameter: FunctionDefinition['parameters'][number],
  argument: Node | undefined,
  text: string,
): string | undefined {
  if (argument?.type === 'quantity') return text;
  const unitOfKind = (session.notebook.display === 'metric' ? parameter.metric : parameter.inch) ?? '';
  if (argument?.type === 'call') {
    const call = explanation?.calls.find((each) => each.function === argument.name);
    return call && valueText(session, call.result, unitOfKind);
  }
  if (argument?.type !== 'number') return undefined;
  const unit = session.notebook.reading === 'metric' ? parameter.metric : parameter.inch;
  return unit ? `${text} ${unit}` : text;
}

/** The text with its references replaced; undefined if nothing was. */
function replaced(text: string, by: (reference: string) => string | undefined): string | undefined {
  let out = '';
  let at = 0;
  let count = 0;
  for (const token of tokenize(text)) {
    if (token.type !== 'name' && token.type !== 'cell') continue;
    const value = by(text.slice(token.from, token.to));
    if (value === undefined) continue;
    out += text.slice(at, token.from) + beforeRest(value, text.slice(token.to));
    at = token.to;
    count += 1;
  }
  return count > 0 ? out + text.slice(at) : undefined;
}

function typesetText(text: string): string | undefined {
  const { tree } = parse(text);
  return tree && `<math display="block"><mrow><mo>=</mo>${inner(set(tree))}</mrow></math>`;
}
