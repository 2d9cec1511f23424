/** The static side of a call: do the arguments fit the parameters, which units are assumed, what does the call give (F13 to F16). */

import {
  failure,
  type ArgumentType,
  type AssumedUnit,
  type Caution,
  type Failure,
  type InferenceResult,
  type NumberType,
  type ScalarType,
  type UnitSystem,
  type ValueType,
} from '../expression/index.ts';
import { describeKind, DIMENSIONLESS, kindNamed, kindsAgree, PLAIN, type Kind } from '../quantity/index.ts';
import { HARDNESS, type FunctionDefinition, type Parameter } from './function-definition.ts';
import { spoken } from './words.ts';

interface Findings {
  readonly assumed: AssumedUnit[];
  readonly cautions: Caution[];
  /** Kinds of the numeric arguments by parameter name. */
  readonly kinds: Map<string, Kind>;
  /** Hardness scale of each parameter that takes any, in order; "" where nothing is known. */
  readonly scales: string[];
}

const ANY = 'any number';

/** Plain numbers that were never said to be a ratio, a share or a count may be read in a unit. */
const isUnsaid = ({ kind }: NumberType): boolean => kind === PLAIN || kind.name === PLAIN.name;

function wants({ kind }: Parameter): string {
  if (kind === 'text') return 'a text';
  if (kind === 'logical') return 'TRUE or FALSE';
  if (kind === HARDNESS) return 'a hardness (HRC, HB or HV)';
  return kind === ANY ? 'a number' : describeKind(kindNamed(kind));
}

function given(type: ScalarType): string {
  return type.type === 'number'
    ? describeKind(type.kind)
    : type.type === 'logical'
      ? 'a logical value'
      : `a ${type.type}`;
}

function misfit(code: '#UNIT!' | '#VALUE!', parameter: Parameter, type: ScalarType): Failure {
  return failure(code, `${spoken(parameter.name)} wants ${wants(parameter)}, was given ${given(type)}`);
}

class Inference {
  readonly found: Findings = { assumed: [], cautions: [], kinds: new Map(), scales: [] };

  constructor(
    private readonly definition: FunctionDefinition,
    private readonly reading: UnitSystem,
  ) {}

  argument(parameter: Parameter, index: number, { type }: ArgumentType): Failure | undefined {
    if (type.type !== 'grid') return this.scalar(parameter, index, type);
    if (!parameter.list)
      return failure('#VALUE!', `${spoken(parameter.name)} wants one value, was given a range`);
    const [blank] = type.blanks ?? [];
    if (blank !== undefined)
      return failure('#VALUE!', `value missing: ${spoken(parameter.name)}, ${blank} is empty`, blank);
    let firstPlain: boolean | undefined;
    for (const column of type.columns) {
      if (column.type === 'number') {
        const plain = column.kind.dimension === DIMENSIONLESS;
        if (firstPlain !== undefined && firstPlain !== plain)
          return failure(
            '#UNIT!',
            `${spoken(parameter.name)} mixes plain numbers with ${describeKind(column.kind)}`,
          );
        firstPlain = plain;
      }
      const wrong = this.scalar(parameter, index, column);
      if (wrong) return wrong;
    }
    return undefined;
  }

  private scalar(parameter: Parameter, index: number, type: ScalarType): Failure | undefined {
    switch (type.type) {
      case 'failed':
        return type.failure;
      case 'neutral':
        return undefined;
      case 'blank':
        return failure('#VALUE!', `value missing: ${spoken(parameter.name)}`, type.cell);
      case 'number':
        if (parameter.numbered !== undefined && type.kind.dimension === DIMENSIONLESS) return undefined;
        return parameter.kind === 'text' || parameter.kind === 'logical'
          ? misfit('#VALUE!', parameter, type)
          : this.number(parameter, index, type);
      default:
        return parameter.kind === type.type ? undefined : misfit('#VALUE!', parameter, type);
    }
  }

  private number(parameter: Parameter, index: number, type: NumberType): Failure | undefined {
    const { kinds, assumed, cautions } = this.found;
    if (parameter.kind === ANY) return this.neighbour(parameter, type);
    if (parameter.kind === HARDNESS) return this.hardness(parameter, type);
    const wanted = kindNamed(parameter.kind);
    kinds.set(parameter.name, wanted);
    if (type.kind.dimension === wanted.dimension) {
      if (!kindsAgree(type.kind, wanted))
        cautions.push({
          key: `${this.definition.name}: kind of ${parameter.name}`,
          text: `${spoken(parameter.name)} wants ${describeKind(wanted)}, was given ${describeKind(type.kind)}`,
        });
      return undefined;
    }
    const inRadians = wanted.dimension.scale === 'angle' && type.kind.name === 'radian measure';
    if (inRadians) return undefined;
    const unit = this.reading === 'inch' ? (parameter.inch ?? parameter.metric) : parameter.metric;
    if (!isUnsaid(type) || unit === undefined) return misfit('#UNIT!', parameter, type);
    if (!assumed.some(({ argument }) => argument === index)) assumed.push({ argument: index, unit });
    return undefined;
  }

  /** A hardness in any scale: its scale is told to the computation, which sees a bare number. */
  private hardness(parameter: Parameter, type: NumberType): Failure | undefined {
    const { scale } = type.kind.dimension;
    if (scale !== 'HRC' && scale !== 'HB' && scale !== 'HV') return misfit('#UNIT!', parameter, type);
    const place = this.definition.parameters.filter(({ kind }) => kind === HARDNESS).indexOf(parameter);
    this.found.scales[place] = scale;
    return undefined;
  }

  /** "any number" parameters of one call share a dimension. */
  private neighbour(parameter: Parameter, type: NumberType): Failure | undefined {
    const { kinds } = this.found;
    for (const other of this.definition.parameters) {
      const kind = other.kind === ANY ? kinds.get(other.name) : undefined;
      if (kind && kind.dimension !== type.kind.dimension)
        return failure(
          '#UNIT!',
          `${spoken(parameter.name)} wants ${describeKind(kind)} as ${spoken(other.name)}, was given ${describeKind(type.kind)}`,
        );
    }
    kinds.set(parameter.name, type.kind);
    return undefined;
  }

  result(): ValueType {
    const { kind, list } = this.definition.result;
    const like = kind.startsWith('like ') ? kind.slice('like '.length) : undefined;
    const single: ScalarType =
      kind === 'text'
        ? { type: 'text' }
        : {
            type: 'number',
            kind: like === undefined ? kindNamed(kind) : (this.found.kinds.get(like) ?? PLAIN),
          };
    return list ? { type: 'grid', columns: [single], rows: 1 } : single;
  }
}

const failed = (why: Failure): InferenceResult => ({ type: { type: 'failed', failure: why } });

/** Type, assumed units and cautions of a call; a failed type names the argument. */
export function inferredCall(
  definition: FunctionDefinition,
  args: readonly ArgumentType[],
  reading: UnitSystem,
): InferenceResult {
  const { name, parameters } = definition;
  if (args.length > parameters.length)
    return failed(
      failure('#VALUE!', `${name} takes at most ${parameters.length} values, was given ${args.length}`),
    );
  const inference = new Inference(definition, reading);
  for (const [index, parameter] of parameters.entries()) {
    const argument = args[index];
    if (!argument) {
      if (!parameter.default) return failed(failure('#VALUE!', `value missing: ${spoken(parameter.name)}`));
      continue;
    }
    const wrong = inference.argument(parameter, index, argument);
    if (wrong) return failed(wrong);
  }
  const { assumed, cautions, scales } = inference.found;
  return {
    type: inference.result(),
    ...(assumed.length > 0 ? { assumed } : {}),
    ...(cautions.length > 0 ? { cautions } : {}),
    ...(scales.length > 0 ? { told: Array.from(scales, (scale) => scale ?? '') } : {}),
  };
}
