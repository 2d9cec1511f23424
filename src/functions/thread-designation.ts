/** Reads a thread designation: M10, M10x1.25, 1/4-20 UNC, 10-32 UNF, 1/2-28 UNEF, 1 1/8-8 UN. */

import { failure, type Failure } from '../expression/index.ts';
import { COARSE_PITCHES, FINE_PITCHES, UNIFIED } from './threads.table.ts';

export interface ThreadPitch {
  /** Metres. */
  readonly pitch: number;
  /** What the table says against it, if anything. */
  readonly remark?: string;
}

const MILLIMETRE = 1e-3;
const INCH = 25.4e-3;

const unknown = (designation: string, why: string): Failure =>
  failure('#N/A', `designation "${designation}": ${why}`);

/** Tolerance class and hand say nothing of the pitch: -6H, -6g, -2B, LH. */
const core = (designation: string): string =>
  designation
    .trim()
    .replaceAll(/\s+/g, ' ')
    .replace(/[ -]+LH$/i, '')
    .replace(/ ?- ?(\d[A-Za-z](\d[A-Za-z])?|[123][AB])$/, '')
    .trim();

function metric(designation: string, size: number, given: string | undefined): ThreadPitch | Failure {
  const coarse = COARSE_PITCHES.get(size);
  if (given === undefined) {
    if (coarse !== undefined) return { pitch: coarse * MILLIMETRE };
    const fine = FINE_PITCHES.get(size);
    return unknown(
      designation,
      fine
        ? `M${size} has no coarse pitch; write ${fine.map((each) => `M${size}x${each}`).join(', ')}`
        : `M${size} is not in the table of coarse pitches; write the pitch too, as in M10x1.25`,
    );
  }
  const pitch = Number(given.replace(',', '.'));
  if (!(pitch > 0 && pitch < size / 2))
    return unknown(designation, `a pitch of ${pitch} mm does not go with ${size} mm`);
  const known = coarse === pitch || (FINE_PITCHES.get(size)?.includes(pitch) ?? false);
  return {
    pitch: pitch * MILLIMETRE,
    ...(known ? {} : { remark: `M${size}x${pitch} is not in the table of ISO 261: a special thread` }),
  };
}

function unified(
  designation: string,
  typedSize: string,
  perInch: number,
  series: string,
): ThreadPitch | Failure {
  if (!(perInch > 0 && perInch <= 120))
    return unknown(designation, `${perInch} threads on an inch are out of reason`);
  const pitch = INCH / perInch;
  if (series !== 'UNC' && series !== 'UNF' && series !== 'UNEF') return { pitch };
  const size = typedSize.replace(/^#/, '').replace(/^(\d+)-(\d+\/\d+)$/, '$1 $2');
  const inches = /^\d+$/.test(typedSize) ? [`${size} in`] : [];
  const counts = [...inches, size].flatMap((each) => UNIFIED.get(series)?.get(each) ?? []);
  if (counts.length === 0)
    return unknown(designation, `${typedSize} is not in the table of ${series} threads`);
  return counts.includes(perInch)
    ? { pitch }
    : unknown(
        designation,
        `${typedSize} ${series} has ${counts.join(' or ')} threads on an inch, not ${perInch}`,
      );
}

/** The pitch of a designation, or #N/A that says what is wrong with it. */
export function threadPitch(designation: string): ThreadPitch | Failure {
  const text = core(designation);
  const metre = /^M ?(\d+(?:[.,]\d+)?)(?: ?[x×*] ?(\d+(?:[.,]\d+)?))?$/i.exec(text);
  if (metre) return metric(designation, Number((metre[1] ?? '').replace(',', '.')), metre[2]);
  const inch = /^(#?\d+|\d+\/\d+|\d+[ -]\d+\/\d+) ?(?:in|")? ?- ?(\d+(?:\.\d+)?) ?(UNC|UNF|UNEF|UN)?$/i.exec(
    text,
  );
  if (inch) {
    const [, size = '', perInch = '', series = 'UN'] = inch;
    return unified(designation, size, Number(perInch), series.toUpperCase());
  }
  return unknown(
    designation,
    'no thread of the table; write M10, M10x1.25, 1/4-20 UNC, 10-32 UNF, 1/2-28 UNEF or 1 1/8-8 UN',
  );
}
