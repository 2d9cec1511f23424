/** What holds for every sketch: it draws or refuses in words, to scale, without a word off its paper; and every function that names one can be drawn. */

import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DEFINITIONS } from '../../src/catalogue.ts';
import { partsOf } from '../../src/document/index.ts';
import { textBox, textExtent } from '../../src/ui/figures/caption-node.ts';
import { exampleSketch, literal } from '../../src/ui/figures/call-sketch.ts';
import type { Drawing, Shape } from '../../src/ui/figures/drawing.ts';
import { pictureOf } from '../../src/ui/figures/drawing-picture.ts';
import { FUNCTION_SKETCHES } from '../../src/ui/figures/function-sketches.table.ts';
import { sayIn } from '../../src/ui/figures/say.ts';
import { drawSketch, isRefused, type Sketch, type SketchValue } from '../../src/ui/figures/sketch.ts';
import { SKETCHES, sketchOf } from '../../src/ui/figures/sketches.ts';
import type { SvgNode } from '../../src/ui/figures/svg-node.ts';
import { computedSheet } from '../sheets/computed-sheet.ts';

const say = sayIn({ display: 'metric', currency: 'EUR' });
const MM = 1e-3;
const DEG = Math.PI / 180;

/** A job for every sketch that it must be able to draw. */
const JOBS: Readonly<Record<string, Readonly<Record<string, SketchValue>>>> = {
  'engagement-down': { Dc: 20 * MM, ae: 4 * MM, fz: 0.15 * MM, z: 4 },
  'engagement-up': { Dc: 100 * MM, ae: 70 * MM, fz: 0.2 * MM, z: 6, e: 10 * MM },
  'circle-inside': { Dc: 20 * MM, Ds: 50 * MM, Dm: 60 * MM },
  'circle-outside': { Dc: 50 * MM, Ds: 103 * MM, Dm: 100 * MM },
  ramp: { P: 2 * MM, Dp: 20 * MM },
  'ball-scallop': { Db: 10 * MM, s: 1 * MM },
  'deep-hole': {
    D: 6 * MM,
    L: 120 * MM,
    Dp: 6.02 * MM,
    L_pilot: 12 * MM,
    peck: 6 * MM,
    dc: 10 * MM,
    at: [50 * MM, 90 * MM],
  },
  'chain-slot': { D: 11 * MM, P: 7 * MM, L: 71 * MM, holes: 11 },
  'drill-entry': { D: 10 * MM, sigma: 140 * DEG, alpha: 10 * DEG },
  'ball-depth': { Dc: 10 * MM, ap: 0.3 * MM, tilt: 15 * DEG },
  'round-insert': { iC: 10 * MM, ap: 1 * MM, Dc: 50 * MM },
  'helix-pitch': { Dc: 20 * MM, z: 4, lambda: 38 * DEG, ap: 10 * MM },
  'crossing-hole': { D: 6 * MM, dc: 8 * MM, gamma: 60 * DEG },
  'turning-chip': { kappa_r: 30 * DEG, f: 0.4 * MM },
  'turned-surface': { r_eps: 0.8 * MM, f: 0.3 * MM },
  'thread-section': { d: 10 * MM, P: 1.5 * MM, Dh: 8.5 * MM },
  'thread-milling': { Dc: 8 * MM, d: 10 * MM, P: 1.5 * MM, L: 15 * MM },
  'pin-external': { Dc: 700 * MM, Ds: 90 * MM, Dm: 80 * MM, fj: 1 * MM },
  'pin-internal': { Dc: 200 * MM, Ds: 90 * MM, Dm: 80 * MM, fj: 1 * MM },
  'overhung-tool': {
    lengths: [40 * MM, 60 * MM, 50 * MM],
    diameters: [16 * MM, 20 * MM, 32 * MM],
    moduli: [580e9, 210e9, 210e9],
    F: 500,
  },
  'stock-part': { m_b: 42, m_f: 3.1, rho: 4430 },
};

const drawn = (sketch: Sketch, values: Readonly<Record<string, SketchValue>>): Drawing => {
  const answer = drawSketch(sketch, new Map(Object.entries(values)), say);
  if (isRefused(answer)) throw new Error(`${sketch.key}: ${answer.refused}`);
  return answer;
};

const numbersOf = (shape: Shape): readonly number[] => {
  switch (shape.type) {
    case 'line':
      return shape.points.flat();
    case 'circle':
      return [...shape.centre, shape.radius];
    case 'dimension':
      return [...shape.from, ...shape.to];
    case 'angle':
      return [...shape.centre, shape.radius, shape.from, shape.to];
    default:
      return [...shape.at];
  }
};

const SHEETS = [
  'chain-drilled-slot.json',
  'crank-line-cutters.json',
  'deep-holes-manifold.json',
  'hinge-fitting-stock.json',
  'long-cutter-chatter.json',
  'pump-cover-boss.json',
  'thread-three-ways.json',
];

const wordsOf = (part: SvgNode | string | undefined): string =>
  typeof part === 'string' ? part : (part?.children ?? []).map(wordsOf).join('');

const all = (nodes: readonly (SvgNode | string)[]): SvgNode[] =>
  nodes.flatMap((each) => (typeof each === 'string' ? [] : [each, ...all(each.children)]));

test('every sketch has a job here, and its parameters have words', () => {
  expect(SKETCHES.map(({ key }) => key).sort()).toEqual(Object.keys(JOBS).sort());
  for (const { parameters } of SKETCHES)
    for (const { words, symbol } of parameters) expect(words.length * symbol.length).toBeGreaterThan(0);
});

test.each(SKETCHES.map((sketch) => [sketch.key, sketch] as const))(
  '%s says in words what it shows, with its values',
  (_, sketch) => {
    const { words, views } = drawn(sketch, JOBS[sketch.key] ?? {});
    expect(words).toMatch(/^[A-Z0-9].*\.$/s);
    expect(words).toMatch(/\d/);
    expect(words).not.toMatch(/NaN|undefined|Infinity|E-/);
    expect(views.length).toBeGreaterThan(0);
  },
);

test.each([312, 640, 980])(
  'no word leaves a paper %d pixels wide, and nothing carries a style attribute',
  (width) => {
    for (const sketch of SKETCHES) {
      const picture = pictureOf(drawn(sketch, JOBS[sketch.key] ?? {}), { width, id: 'f', say, unit: MM });
      const nodes = all(picture.nodes);
      const words = textExtent(nodes.filter(({ attributes }) => attributes['class'] !== 'foot'));
      expect([
        sketch.key,
        words.left >= -0.5,
        words.right <= width + 0.5,
        words.bottom <= picture.height,
      ]).toEqual([sketch.key, true, true, true]);
      expect(nodes.every(({ attributes }) => !('style' in attributes))).toBe(true);
      expect(nodes.flatMap(({ attributes }) => Object.values(attributes)).join(' ')).not.toMatch(
        /NaN|undefined|Infinity/,
      );
    }
  },
);

/** Every drawing that a user meets without typing a value: the jobs, the functions' examples, the shipped notebooks. */
const everyDrawing = (): (readonly [string, Drawing])[] => {
  const jobs = SKETCHES.map((sketch) => [sketch.key, drawn(sketch, JOBS[sketch.key] ?? {})] as const);
  const examples = DEFINITIONS.flatMap((definition) =>
    definition.examples.flatMap((example) => {
      const made = exampleSketch(definition, example);
      const answer = made && drawSketch(made.sketch, made.values, say);
      return answer && !isRefused(answer)
        ? [[`${definition.name} ${example.given.join('; ')}`, answer] as const]
        : [];
    }),
  );
  const figures = SHEETS.flatMap((file) => {
    const { notebook, engine } = computedSheet(file);
    return partsOf(notebook, 'figures').flatMap(({ title, content }) => {
      const sketch = content.type === 'sketch' ? sketchOf(content.sketch) : undefined;
      if (content.type !== 'sketch' || !sketch) return [];
      const values: Record<string, SketchValue> = {};
      for (const { key, list } of sketch.parameters) {
        const numbers = content.values
          .filter(({ parameter }) => parameter === key)
          .map(({ place }) => Number(engine.result(place)?.value));
        const [first] = numbers;
        if (first !== undefined) values[key] = list ? numbers : first;
      }
      return [[`${file} ${title}`, drawn(sketch, values)] as const];
    });
  });
  return [...jobs, ...examples, ...figures];
};
let drawings: ReturnType<typeof everyDrawing> | undefined;

/** Widths of a small screen's, the desk's and the tablet's margin, of paper, and of a figure laid over the desk. */
test.each([311, 388, 640, 980])('no word lies over another on a paper %d pixels wide', (width) => {
  const offenders: string[] = [];
  for (const [title, drawing] of (drawings ??= everyDrawing())) {
    const { nodes } = pictureOf(drawing, { width, id: 'f', say, unit: MM });
    const words = all(nodes).filter(({ tag }) => tag === 'text');
    // The estimate of the width errs on the wide side, and a line of text is lower than its letters may reach.
    const boxes = words.map((each) => {
      const { left, right, top, bottom } = textBox(each);
      const [x, y] = [0.06 * (right - left), 0.06 * (bottom - top)];
      return { left: left + x + 2, right: right - x - 2, top: top + y + 2, bottom: bottom - y - 2 };
    });
    for (const [k, a] of boxes.entries())
      for (const [l, b] of boxes.entries())
        if (l > k && a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
          offenders.push(`${title}: ${wordsOf(words[k])} / ${wordsOf(words[l])}`);
  }
  expect(offenders).toEqual([]);
});

test('a view is drawn to one scale: length and height of a rectangle keep their ratio, stretched ones by the factor said', () => {
  const square: Drawing = {
    words: 'A square.',
    views: [
      {
        shapes: [
          {
            type: 'line',
            points: [
              [0, 0],
              [0.02, 0],
              [0.02, 0.01],
              [0, 0.01],
            ],
            stroke: 'outline',
            closed: true,
          },
        ],
      },
    ],
  };
  const sides = (stretch: number): number => {
    const [view] = square.views;
    const picture = pictureOf(
      { ...square, views: [{ ...view, shapes: view?.shapes ?? [], stretch }] },
      { width: 400, id: 'f', say, unit: MM },
    );
    const d = String(
      all(picture.nodes).find(({ attributes }) => attributes['class'] === 'outline')?.attributes['d'],
    );
    const [x0, y0, x1, , , y2] = (d.match(/-?[\d.]+/g) ?? []).map(Number);
    return Math.abs(((y2 ?? 0) - (y0 ?? 0)) / ((x1 ?? 0) - (x0 ?? 0)));
  };
  expect(sides(1)).toBeCloseTo(0.5, 3);
  expect(sides(1.5)).toBeCloseTo(0.75, 3);
});

test('the squares of the paper are as large as the words below say', () => {
  const picture = pictureOf(drawn(SKETCHES[0] as Sketch, JOBS['engagement-down'] ?? {}), {
    width: 360,
    id: 'f',
    say,
    unit: MM,
  });
  const nodes = all(picture.nodes);
  const cutter = nodes.find(
    ({ tag, attributes }) => tag === 'circle' && attributes['class'] === 'outline area tool',
  );
  const lines =
    String(nodes.find(({ attributes }) => attributes['class'] === 'squares')?.attributes['d']).match(
      /M([\d.]+) [\d.]+V/g,
    ) ?? [];
  const [first, second] = lines.map((line) => Number(line.slice(1).split(' ')[0]));
  const foot = nodes.find(({ attributes }) => attributes['class'] === 'foot')?.children.join('') ?? '';
  const millimetres = Number(/one square is ([\d.]+) mm/.exec(foot)?.[1]);
  // The cutter is 20 mm: its radius on the paper tells the scale.
  const pixels = Number(cutter?.attributes['r']) / 10;
  expect(((second ?? 0) - (first ?? 0)) / pixels).toBeCloseTo(millimetres, 1);
});

test('an inch notebook is drawn on squares of inches', () => {
  const inches = sayIn({ display: 'inch', currency: 'EUR' });
  const [sketch] = SKETCHES;
  const answer = sketch && drawSketch(sketch, new Map(Object.entries({ Dc: 0.0254, ae: 0.00635 })), inches);
  if (!answer || isRefused(answer)) throw new Error('not drawn');
  expect(answer.words).toContain('1 in diameter');
  const nodes = all(pictureOf(answer, { width: 400, id: 'f', say: inches, unit: 0.0254 }).nodes);
  const foot = nodes.find(({ attributes }) => attributes['class'] === 'foot')?.children.join('');
  expect(foot).toMatch(/^one square is 0\.[125]+ in$/);
});

test('whatever the values, a sketch draws finite points or refuses one of its parameters in words', () => {
  const size = fc.double({ min: -3, max: 3, noNaN: true });
  for (const sketch of SKETCHES) {
    const job = JOBS[sketch.key] ?? {};
    const keys = Object.keys(job);
    fc.assert(
      fc.property(fc.array(size, { minLength: keys.length, maxLength: keys.length }), (sizes) => {
        const values = new Map(
          keys.map((key, k): [string, SketchValue] => {
            const factor = 10 ** (sizes[k] ?? 0);
            const value = job[key] ?? 1;
            return [key, typeof value === 'number' ? value * factor : value.map((each) => each * factor)];
          }),
        );
        const answer = drawSketch(sketch, values, say);
        if (isRefused(answer)) {
          expect(sketch.parameters.map(({ key }) => key)).toContain(answer.parameter);
          expect(answer.refused.length).toBeGreaterThan(5);
        } else
          expect(
            answer.views
              .flatMap(({ shapes }) => shapes)
              .flatMap(numbersOf)
              .every(Number.isFinite),
          ).toBe(true);
      }),
      { seed: 5, numRuns: 150 },
    );
  }
});

test('a value that is missing, not a number or not above 0 is refused by the name of its parameter', () => {
  const sketch = sketchOf('ball-scallop') as Sketch;
  expect(drawSketch(sketch, new Map([['Db', 0.01]]), say)).toEqual({
    parameter: 's',
    refused: 'stepover: a value is missing',
  });
  for (const bad of [0, -0.001, Number.NaN])
    expect(
      drawSketch(
        sketch,
        new Map([
          ['Db', 0.01],
          ['s', bad],
        ]),
        say,
      ),
    ).toMatchObject({ parameter: 's' });
});

test('the table of functions names sketches, parameters and functions that exist', () => {
  const domain = new Map(DEFINITIONS.map((definition) => [definition.name, definition]));
  const offenders: string[] = [];
  for (const [name, { sketch, takes }] of FUNCTION_SKETCHES) {
    const definition = domain.get(name);
    const keys = typeof sketch === 'string' ? [sketch] : Object.values(sketch.of);
    const symbols = new Set(definition?.parameters.map(({ symbol }) => symbol));
    if (!definition) offenders.push(`${name} is no function`);
    if (typeof sketch !== 'string' && !symbols.has(sketch.by)) offenders.push(`${name} has no ${sketch.by}`);
    for (const key of keys) {
      const parameters = new Set(sketchOf(key)?.parameters.map((parameter) => parameter.key));
      for (const [parameter, symbol] of Object.entries(takes)) {
        if (!parameters.has(parameter)) offenders.push(`${name}: ${key} has no ${parameter}`);
        if (symbol !== '=' && !symbols.has(symbol)) offenders.push(`${name} has no ${symbol}`);
      }
    }
  }
  expect(offenders).toEqual([]);
});

test('each of these functions is drawn from the numbers of one of its examples', () => {
  const offenders: string[] = [];
  for (const definition of DEFINITIONS) {
    if (!FUNCTION_SKETCHES.has(definition.name)) continue;
    const answers = definition.examples.map((example) => {
      const made = exampleSketch(definition, example);
      if (!made) return `${example.given.join('; ')}: no sketch`;
      const answer = drawSketch(made.sketch, made.values, say);
      return isRefused(answer) ? `${example.given.join('; ')}: ${answer.refused}` : 'drawn';
    });
    if (!answers.includes('drawn')) offenders.push(`${definition.name}: ${answers.join(' | ')}`);
  }
  expect(offenders).toEqual([]);
});

test('arguments are read as they would be typed', () => {
  expect(literal('20 mm', 'in')).toBeCloseTo(0.02, 12);
  expect(literal('20', 'mm')).toBeCloseTo(0.02, 12);
  expect(literal('4', undefined)).toBe(4);
  expect(literal('"down"', undefined)).toBe('down');
  expect(literal('{40;60} mm', 'mm')).toEqual([0.04, 0.06]);
  expect(literal('(Dc - ae) / 2', 'mm')).toBeUndefined();
});
