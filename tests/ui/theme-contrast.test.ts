/** Text against its background in both themes: at least 7:1, computed as WCAG 2.2 defines it (relative luminance, contrast ratio). */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const css = readFileSync(join(import.meta.dirname, '../../src/ui/page.css'), 'utf8');

/** Variables with six-digit colours of the first rule that begins with this selector. */
function colours(selector: string): ReadonlyMap<string, string> {
  const from = css.indexOf(`${selector} {`);
  const rule = css.slice(from, css.indexOf('}', from));
  return new Map(
    [...rule.matchAll(/--([a-z0-9-]+): (#[0-9a-f]{6});/g)].map(([, name = '', colour = '']) => [
      name,
      colour,
    ]),
  );
}

/** https://www.w3.org/TR/WCAG22/#dfn-relative-luminance */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const part = Number.parseInt(colour.slice(at, at + 2), 16) / 255;
    return part <= 0.040_45 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

/** https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio */
function contrast(a: string, b: string): number {
  const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
  return (light + 0.05) / (dark + 0.05);
}

const SURFACES = ['paper', 'paper-edge', 'plate', 'wash', 'button'];
/** Texts and the surfaces on which they stand. */
const PAIRS: readonly (readonly [string, readonly string[]])[] = [
  ['ink', [...SURFACES, 'caution-wash', 'error-wash']],
  ['ink-2', SURFACES],
  ['accent', ['paper', 'paper-edge', 'plate', 'wash', 'button']],
  ['on-accent', ['accent']],
  ['caution', ['paper', 'paper-edge', 'caution-wash']],
  ['error', ['paper', 'paper-edge', 'error-wash']],
  ['good', ['paper']],
  ['token-name', ['paper']],
  ['token-number', ['paper']],
  ['token-text', ['paper']],
  ...[0, 1, 2, 3, 4, 5].map((k) => [`reference-${k}`, ['paper']] as const),
];

test('the ratio of black on white is 21, that of a grey #767676 on white 4.54, as WCAG says', () => {
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10);
  // The lightest grey that passes 4.5:1 on white, a figure of the W3C's own guidance.
  expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
});

for (const [theme, selector] of [
  ['light', ':root'],
  ['dark', ":root[data-theme='dark']"],
] as const)
  test(`every text of the ${theme} theme has a contrast of at least 7:1`, () => {
    const values = colours(selector);
    const weak = PAIRS.flatMap(([text, surfaces]) =>
      surfaces.flatMap((surface) => {
        const [a, b] = [values.get(text), values.get(surface)];
        if (a === undefined || b === undefined) return [`${text} or ${surface} is not defined`];
        const ratio = contrast(a, b);
        return ratio >= 7 ? [] : [`${text} on ${surface}: ${ratio.toFixed(2)}`];
      }),
    );
    expect(weak).toEqual([]);
  });
