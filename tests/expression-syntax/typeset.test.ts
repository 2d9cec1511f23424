import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse, readSymbol, typeset, typesetSymbol, typesetUnit } from '../../src/expression/index.ts';
import type { TypesetOptions } from '../../src/expression/index.ts';
import { trees } from './random-trees.ts';

/** The MathML without its outer element and with plain letters for the commonest tags. */
function set(text: string, options?: TypesetOptions): string {
  const { tree, problem } = parse(text);
  if (!tree || problem) throw new Error(`${text}: ${problem?.message}`);
  return typeset(tree, options).replace(/^<math[^>]*>|<\/math>$/g, '');
}

// F24; the letters are common practice, no source.
test.each([
  ['kappa_r', 'κ', 'r'],
  ['a_e', 'a', 'e'],
  ['ae', 'a', 'e'],
  ['fz', 'f', 'z'],
  ['Dc', 'D', 'c'],
  ['kc11', 'k', 'c11'],
  ['kc1.1', 'k', 'c1.1'],
  ['x1', 'x', '1'],
  ['eta', 'η', undefined],
  ['phi_s', 'φ', 's'],
  ['gamma0', 'γ', '0'],
  ['h', 'h', undefined],
  ['Pm_max', 'Pm', 'max'],
  ['speed', 'speed', undefined],
  ['delta_theta', 'δ', 'θ'],
])('F24 %s is %s with the index %s', (name, base, index) => {
  expect(readSymbol(name)).toEqual(index === undefined ? { base } : { base, index });
});

test('F24 a single letter is slanted, its index upright', () => {
  expect(typesetSymbol('kappa_r')).toBe('<msub><mi>κ</mi><mi mathvariant="normal">r</mi></msub>');
  expect(typesetSymbol('x1')).toBe('<msub><mi>x</mi><mn>1</mn></msub>');
  expect(typesetSymbol('speed')).toBe('<mi mathvariant="normal">speed</mi>');
});

test('a quotient is a fraction that needs no brackets', () => {
  expect(set('=(a+b)/(c)')).toBe('<mfrac><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow><mi>c</mi></mfrac>');
});

test('roots, absolute values, powers and functions are written as in mathematics', () => {
  expect(set('=SQRT(a)')).toBe('<msqrt><mi>a</mi></msqrt>');
  expect(set('=ABS(a)')).toBe('<mrow><mo fence="true">|</mo><mi>a</mi><mo fence="true">|</mo></mrow>');
  expect(set('=a^(b+1)')).toBe('<msup><mi>a</mi><mrow><mi>b</mi><mo>+</mo><mn>1</mn></mrow></msup>');
  expect(set('=SIN(a)')).toContain('<mi mathvariant="normal">sin</mi>');
  expect(set('=PI()')).toBe('<mi>π</mi>');
});

test('the base of a power keeps its brackets, and gets them where a sign or a quotient would mislead', () => {
  const open = '<mo fence="true">(</mo>';
  expect(set('=(a*b)^2')).toContain(open);
  expect(set('=-a^2')).toBe(
    `<msup><mrow>${open}<mrow><mo form="prefix">−</mo><mi>a</mi></mrow><mo fence="true">)</mo></mrow><mn>2</mn></msup>`,
  );
  expect(set('=3 mm ^ 2')).toContain(open);
  expect(set('=2^3^2')).toContain(open);
});

test('F7 a quantity is number, thin space, upright unit', () => {
  expect(set('=0.1 mm')).toBe(
    '<mrow><mn>0.1</mn><mspace width="0.17em"/><mrow><mi mathvariant="normal">mm</mi></mrow></mrow>',
  );
  expect(set('=0.1 mm', { decimalMark: ',' })).toContain('<mn>0,1</mn>');
  expect(typesetUnit('m/s^2')).toBe(
    '<mrow><mi mathvariant="normal">m</mi><mo lspace="0" rspace="0" stretchy="false">/</mo><msup><mi mathvariant="normal">s</mi><mn>2</mn></msup></mrow>',
  );
  expect(typesetUnit('cm3')).toContain('<mn>3</mn>');
  expect(typesetUnit('N.m')).toContain('>·<');
  expect(typesetUnit('m⁻¹')).toContain('<mo form="prefix">−</mo><mn>1</mn>');
  expect(set('=1e-6 m')).toContain('<msup><mn>10</mn>');
});

test('IF is set as cases, nested ones as further lines', () => {
  const text = set('=IF(a>b;1;IF(a<0;2;3))');
  expect(text.match(/<mtr>/g)).toHaveLength(3);
  expect(text).toContain('<mtext>otherwise</mtext>');
  expect(text).toContain('<mo>&gt;</mo>');
});

test('a product that holds a sum gets its brackets from the tree or from the precedence', () => {
  expect(set('=(a+b)*c')).toContain('<mo fence="true">(</mo>');
  expect(set('=a-(b-c)')).toContain('<mo fence="true">(</mo>');
});

test('a fraction in a product or a sum needs no brackets, under an exponent it does', () => {
  expect(set('=a*(b/c)+d')).not.toContain('<mo fence="true">');
  expect(set('=a*(b/c)^2')).toContain('<mo fence="true">(</mo>');
  expect(set('=a^(1/n)')).toBe('<msup><mi>a</mi><mrow><mn>1</mn><mo>/</mo><mi>n</mi></mrow></msup>');
});

test('names may bring their own symbols', () => {
  expect(set('=B3', { symbol: (node) => (node.type === 'cell' ? 'phi_1' : undefined) })).toBe(
    '<msub><mi>φ</mi><mn>1</mn></msub>',
  );
});

/** Every element closed in order, no stray < or &. */
function wellFormed(markup: string): boolean {
  const open: string[] = [];
  const rest = markup.replace(/<(\/?)([a-z]+)((?: [a-z]+="[^"<]*")*)(\/?)>/g, (_, close, name, __, empty) => {
    if (close === '/') return open.pop() === name ? '' : '<';
    if (empty === '') open.push(name);
    return '';
  });
  return open.length === 0 && !rest.replace(/&(?:amp|lt|gt|quot);/g, '').match(/[<>&]/);
}

test('whatever a formula holds, the markup is well formed and no text of it becomes markup', () => {
  expect(wellFormed(typeset(parse('="<script>&"').tree ?? { type: 'missing', from: 0, to: 0 }))).toBe(true);
  fc.assert(
    fc.property(trees, (tree) => {
      expect(wellFormed(typeset(tree, { display: true }))).toBe(true);
    }),
    { seed: 20_260_309, numRuns: 2000 },
  );
  for (const text of ['=1+', '=SUM(', '=B3 B4', '=<']) {
    const { tree } = parse(text);
    expect(wellFormed(tree ? typeset(tree) : '<')).toBe(true);
  }
});
