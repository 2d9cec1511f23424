/** Reading plain numbers from text and writing them by format codes, for VALUE, NUMBERVALUE, TEXT and FIXED. */

import { rounded } from '../numeric/index.ts';

/** "6,000.5", "12.5%", "1E-3", "7 1/4", "0 3/8"; undefined for anything else. Fractions need their whole part: "3/8" is no number. */
export function parseNumberText(text: string, decimalMark: string, groupMark: string): number | undefined {
  const trimmed = text.trim();
  const percents = /(?:\s*%)*$/.exec(trimmed)?.[0] ?? '';
  const body = trimmed.slice(0, trimmed.length - percents.length).replace(/^\u2212/u, '-');
  const hundredth = 100 ** (percents.match(/%/g)?.length ?? 0);
  const mixed = /^([+-]?)(\d+) (\d+)\/(\d+)$/.exec(body);
  if (mixed) {
    const [, sign, whole, over, under] = mixed;
    if (Number(under) === 0) return undefined;
    const size = Number(whole) + Number(over) / Number(under);
    return (sign === '-' ? -size : size) / hundredth;
  }
  if (decimalMark.length !== 1) return undefined;
  const [integer = '', fraction, ...more] = body.split(decimalMark);
  if (more.length > 0) return undefined;
  const groups = groupMark === '' ? [integer] : integer.split(groupMark);
  if (
    groups.length > 1 &&
    !(/^[+-]?\d{1,3}$/.test(groups[0]!) && groups.slice(1).every((part) => /^\d{3}/.test(part)))
  ) {
    return undefined;
  }
  const canonical = groups.join('') + (fraction === undefined ? '' : `.${fraction}`);
  if (!/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(canonical)) return undefined;
  const value = Number(canonical);
  return Number.isFinite(value) ? value / hundredth : undefined;
}

/** Digits with a fixed number of decimals, "12,345.68" with grouping; negative decimals round to tens. */
export function fixedText(value: number, decimals: number, grouped: boolean): string {
  const size = Math.abs(rounded(value, decimals));
  const digits = size >= 1e21 ? BigInt(size).toString() : size.toFixed(Math.max(0, Math.min(100, decimals)));
  const [whole = '0', fraction] = digits.split('.');
  const shown = grouped ? whole.replace(/\B(?=(\d{3})+$)/g, ',') : whole;
  const sign = value < 0 && /[1-9]/.test(digits) ? '-' : '';
  return sign + shown + (fraction === undefined ? '' : `.${fraction}`);
}

interface Piece {
  readonly literal: boolean;
  readonly text: string;
}

/** Splits a format section into literal texts and code characters. */
function pieces(section: string): Piece[] | undefined {
  const found: Piece[] = [];
  const pattern = /"([^"]*)"|\\(.)|([0#?.,%]+|[Ee][+-]0+)|([ $+\-():/€°]|[^\w"\\])/gsuy;
  let at = 0;
  while (at < section.length) {
    pattern.lastIndex = at;
    const match = pattern.exec(section);
    if (!match) return undefined;
    at = pattern.lastIndex;
    if (match[3] !== undefined) found.push({ literal: false, text: match[3] });
    else found.push({ literal: true, text: match[1] ?? match[2] ?? match[4] ?? '' });
  }
  return found;
}

/** Splits at semicolons outside quotation marks. */
const sectionsOf = (code: string): string[] =>
  code.match(/(?:"[^"]*"|\\.|[^;])+|(?<=;)(?=;|$)|^(?=;)/gsu) ?? [code];

/**
 * A plain number by a format code: 0 # ? . , % E+00, texts in quotation marks, up to three sections parted by semicolons
 * (positive; negative; zero). undefined for codes that are not understood (dates are not).
 */
export function formattedNumber(value: number, code: string): string | undefined {
  if (/^(general|standard)$/i.test(code.trim()))
    return String(Number(value.toPrecision(15))).replace('e', 'E');
  const sections = sectionsOf(code);
  const chosen = value < 0 && sections.length > 1 ? 1 : value === 0 && sections.length > 2 ? 2 : 0;
  const parts = pieces(sections[chosen] ?? '');
  if (!parts) return undefined;
  const pattern = parts
    .filter((part) => !part.literal)
    .map((part) => part.text)
    .join('');
  if (pattern === '') return parts.map((part) => part.text).join('');
  const percent = (pattern.match(/%/g) ?? []).length;
  const exponent = /[Ee]([+-])(0+)/.exec(pattern);
  const mantissa = pattern.replace(/[Ee][+-]0+/, '').replaceAll('%', '');
  const [wholeCode = '', decimalCode = '', ...rest] = mantissa.split('.');
  if (rest.length > 0) return undefined;
  const thousands = /,+$/.exec(wholeCode)?.[0].length ?? 0;
  const grouped = wholeCode.slice(0, wholeCode.length - thousands).includes(',');
  const least = (wholeCode.match(/0/g) ?? []).length;
  const most = decimalCode.replaceAll(/[^0#?]/g, '').length;
  const leastDecimals = (decimalCode.match(/0/g) ?? []).length;
  let scaled = Math.abs(value) * 100 ** percent * 1000 ** -thousands;
  let power = 0;
  if (exponent && scaled !== 0) {
    const places = Math.max(1, wholeCode.replaceAll(/[^0#?]/g, '').length);
    power = Math.floor(Math.log10(scaled)) - (places - 1);
    scaled /= 10 ** power;
    if (rounded(scaled, most) >= 10 ** places) {
      power += 1;
      scaled /= 10;
    }
  }
  const [digits = '0', decimals = ''] = fixedText(scaled, most, false).split('.');
  const kept = decimals.replace(/0+$/, '').padEnd(leastDecimals, '0');
  const plainWhole = digits === '0' && least === 0 ? '' : digits.padStart(least, '0');
  const whole = grouped ? plainWhole.replace(/\B(?=(\d{3})+$)/g, ',') : plainWhole;
  const number =
    whole +
    (mantissa.includes('.') ? `.${kept}` : '') +
    (exponent
      ? `E${power < 0 ? '-' : exponent[1] === '+' ? '+' : ''}${String(Math.abs(power)).padStart(exponent[2]!.length, '0')}`
      : '');
  let placed = false;
  const body = parts
    .map((part) => {
      if (part.literal) return part.text;
      const signs = part.text.replaceAll(/[^%]/g, '');
      if (/[0#?]/.test(part.text) && !placed) {
        placed = true;
        return number + signs;
      }
      return signs;
    })
    .join('');
  return value < 0 && chosen === 0 && /[1-9]/.test(number) ? `-${body}` : body;
}
