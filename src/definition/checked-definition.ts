/** What can be wrong with a definition as data, before anything is computed. */

import { namesOf } from '../expression/index.ts';
import { isKindName, isUnknownUnit, parseUnit } from '../quantity/index.ts';
import { compileDefinition } from './compiled-definition.ts';
import { equationTree } from './equation.ts';
import { FAMILIES } from './families.ts';
import { HARDNESS, type FunctionDefinition } from './function-definition.ts';

const SUMMARY_LENGTH = 90;
const PLAIN_KINDS = new Set([HARDNESS, 'text', 'logical', 'any number']);

/** All faults of a definition in words; none for a good one. */
export function definitionFaults(definition: FunctionDefinition): string[] {
  const {
    name,
    family,
    summary,
    parameters,
    result,
    constants = [],
    steps = [],
    examples,
    sources,
  } = definition;
  const faults: string[] = [];
  const fault = (holds: boolean, text: string): void => {
    if (holds) faults.push(text);
  };
  fault(!/^[A-Z]+(\.[A-Z0-9_]+)$/.test(name), 'its name is not FAMILY.QUANTITY');
  fault(!FAMILIES.some((each) => each.name === family), `no family ${family}`);
  fault(!name.startsWith(`${family}.`), `it does not belong to family ${family}`);
  fault(summary.length > SUMMARY_LENGTH, `its summary has ${summary.length} characters`);
  fault(definition.searchWords.length === 0, 'it has no search words');
  fault(sources.length === 0, 'it has no source');
  fault(!examples.some(({ origin }) => origin !== 'self'), 'it has no example from outside');
  const kinds = [...parameters.map(({ kind }) => kind), ...steps.map(({ kind }) => kind)];
  for (const kind of kinds) fault(!PLAIN_KINDS.has(kind) && !isKindName(kind), `no kind ${kind}`);
  fault(
    result.kind !== 'text' && !result.kind.startsWith('like ') && !isKindName(result.kind),
    `no kind ${result.kind} for the result`,
  );
  for (const { name: parameter, metric, inch } of parameters)
    for (const unit of [metric, inch])
      fault(unit !== undefined && isUnknownUnit(parseUnit(unit)), `${parameter}: no unit ${unit}`);
  const optionalFrom = parameters.findIndex((parameter) => parameter.default);
  fault(
    optionalFrom >= 0 && parameters.slice(optionalFrom).some((parameter) => !parameter.default),
    'an optional parameter stands before a required one',
  );
  const inputs = [...parameters, ...constants, ...steps].map(({ symbol }) => symbol);
  fault(new Set(inputs).size < inputs.length, 'two of its symbols are the same');
  try {
    if ('equation' in definition) {
      const used = new Set(
        [definition.equation, ...steps.map(({ equation }) => equation)].flatMap((text) =>
          namesOf(equationTree(text)).map((node) => node.name),
        ),
      );
      for (const { symbol } of parameters)
        fault(!used.has(symbol) && !usedElsewhere(symbol), `${symbol} is not in the equation`);
      for (const symbol of used)
        fault(!inputs.includes(symbol), `the equation uses ${symbol}, which nothing gives`);
    }
    compileDefinition(definition);
  } catch (error) {
    faults.push(error instanceof Error ? error.message : String(error));
  }
  return faults.map((text) => `${name}: ${text}`);

  function usedElsewhere(symbol: string): boolean {
    const { refuses = [], cautions = [] } = definition;
    const texts = [
      ...[...refuses, ...cautions].map(({ when }) => when),
      ...parameters.flatMap(({ default: standard }) =>
        standard && 'value' in standard ? [standard.value] : [],
      ),
    ];
    return texts.some((text) => namesOf(equationTree(text)).some((node) => node.name === symbol));
  }
}

/** The definition itself; throws with all faults. */
export function checkedDefinition<D extends FunctionDefinition>(definition: D): D {
  const faults = definitionFaults(definition);
  if (faults.length > 0) throw new Error(faults.join('\n'));
  return definition;
}
