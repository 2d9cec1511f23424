/** A unit as MathML: upright, with a middle dot and raised exponents, as ISO 80000-1 writes it. */

import { escapeMarkup } from './symbol.ts';

const SUPERSCRIPTS = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const PART = /([\p{L}°′″%_]+)(?:\^?\(?(-?\d+(?:\.\d+)?(?:\/\d+)?)\)?)?|([·/()])|(\d+)/gu;
const DEGREES: ReadonlyMap<string, string> = new Map([
  ['deg', '°'],
  ['degC', '°C'],
  ['degF', '°F'],
  ['um', 'µm'],
]);

/** The unit's text as typed, set: "kW/(cm3/min)", "N.m", "m^2". */
export function typesetUnit(unit: string): string {
  const plain = unit
    .replace(/[⁰¹²³⁴⁵⁶⁷⁸⁹]/g, (digit) => String(SUPERSCRIPTS.indexOf(digit)))
    .replace(/⁻/g, '-')
    .replace(/[*⋅]|(?<!\d)\.|\.(?!\d)/g, '·');
  let set = '';
  for (const [, word, exponent, sign, number] of plain.matchAll(PART)) {
    if (word !== undefined) {
      const base = `<mi mathvariant="normal">${escapeMarkup(DEGREES.get(word) ?? word)}</mi>`;
      const upper = exponent?.startsWith('-')
        ? `<mrow><mo form="prefix">−</mo><mn>${exponent.slice(1)}</mn></mrow>`
        : `<mn>${exponent}</mn>`;
      set += exponent === undefined ? base : `<msup>${base}${upper}</msup>`;
    } else if (sign !== undefined) set += `<mo lspace="0" rspace="0" stretchy="false">${sign}</mo>`;
    else set += `<mn>${number}</mn>`;
  }
  return `<mrow>${set}</mrow>`;
}
