/** The call around the caret and its parameters, for the hint under the entry line. */

import type { FunctionDefinition, Parameter } from '../definition/index.ts';
import { tokenize } from '../expression/index.ts';
import type { UnitSystem } from '../document/index.ts';
import { inWords, typing } from './number-locale.ts';
import type { Catalogue } from './ports.ts';

export interface Hint {
  readonly name: string;
  readonly parameters: readonly {
    readonly text: string;
    readonly detail: string;
    readonly optional: boolean;
  }[];
  /** Which parameter the caret stands in. */
  readonly at: number;
  readonly result: string;
}

/** Innermost call that the caret stands in: its function and the number of the argument. */
export function callAt(
  text: string,
  caret: number,
): { readonly name: string; readonly argument: number } | undefined {
  const open: { name: string | undefined; argument: number }[] = [];
  let pending: string | undefined;
  for (const token of tokenize(text, typing())) {
    if (token.from >= caret) break;
    if (token.type === 'function') pending = token.value;
    else if (token.type === 'open') {
      open.push({ name: pending, argument: 0 });
      pending = undefined;
    } else if (token.type === 'close') open.pop();
    else if (token.type === 'separator') {
      const last = open.at(-1);
      if (last) last.argument += 1;
    }
  }
  const found = open.findLast((each) => each.name !== undefined);
  return found?.name === undefined ? undefined : { name: found.name, argument: found.argument };
}

const trade = (name: string): string => name.replaceAll('_', ' ');

/** Words that may stand there; a row of numbered ones by its ends. */
function wordsText({ words, numbered, kind }: Parameter): string {
  if (!words) return kind;
  const quoted = words.map((word) => `"${word}"`);
  return numbered === undefined ? quoted.join(' or ') : `${quoted[0]} to ${quoted.at(-1)}`;
}

/** What a plain number at this place is read as (F15), limits, words. */
export function parameterDetail(parameter: Parameter, reading: UnitSystem): string {
  const unit = reading === 'metric' ? parameter.metric : parameter.inch;
  const { above, least, below, most } = parameter.hard ?? {};
  const limits = [
    above === undefined ? '' : `above ${above}`,
    least === undefined ? '' : `from ${least}`,
    below === undefined ? '' : `below ${below}`,
    most === undefined ? '' : `up to ${most}`,
  ].filter(Boolean);
  return [
    parameter.meaning,
    wordsText(parameter),
    inWords(limits.join(', ')),
    unit ? `a plain number is read in ${unit}` : '',
  ]
    .filter(Boolean)
    .join(' · ');
}

function defaultText(parameter: Parameter): string {
  if (!parameter.default) return '';
  const { default: fallback } = parameter;
  return ` = ${'value' in fallback ? inWords(fallback.value) : fallback.meaning}`;
}

export function signatureText(definition: FunctionDefinition): string {
  const parameters = definition.parameters.map((each) =>
    each.default ? `${trade(each.name)}${defaultText(each)}, if given` : trade(each.name),
  );
  return `${definition.name}(${parameters.join('; ')})`;
}

export function hintAt(
  text: string,
  caret: number,
  catalogue: Catalogue | undefined,
  reading: UnitSystem,
): Hint | undefined {
  const call = callAt(text, caret);
  if (!call || !catalogue) return undefined;
  const definition = catalogue.domain.find((each) => each.name === call.name);
  if (definition) {
    const last = definition.parameters.length - 1;
    return {
      name: definition.name,
      parameters: definition.parameters.map((each) => ({
        text: trade(each.name) + defaultText(each),
        detail: parameterDetail(each, reading),
        optional: each.default !== undefined,
      })),
      at: Math.min(call.argument, last),
      result: definition.result.meaning,
    };
  }
  const builtin = catalogue.builtins.find((each) => each.name === call.name);
  if (!builtin) return undefined;
  const parameters = builtin.parameters
    .replace(/^[A-Z][A-Z0-9.]*\((.*)\)$/, '$1')
    .split(/\s*;\s*/)
    .map((each) => ({ text: each, detail: '', optional: false }));
  return {
    name: builtin.name,
    parameters,
    at: Math.min(call.argument, parameters.length - 1),
    result: builtin.summary,
  };
}
