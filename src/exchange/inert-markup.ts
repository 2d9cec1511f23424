/** SVG and MathML text that only draws: what is not on the list of elements and attributes is left out, what is broken is refused. */

import { escaped, Markup, unescaped } from './markup.ts';

const SVG =
  'svg g path line polyline polygon rect circle ellipse text tspan title desc defs clipPath marker use linearGradient stop pattern';
const MATHML =
  'math mrow mi mn mo ms mtext mspace mfrac msqrt mroot msub msup msubsup munder mover munderover mtable mtr mtd mpadded mstyle';
const ELEMENTS: ReadonlySet<string> = new Set(`${SVG} ${MATHML}`.split(' '));

const ATTRIBUTES: ReadonlySet<string> = new Set(
  (
    'xmlns viewBox preserveAspectRatio width height x y x1 y1 x2 y2 cx cy r rx ry d points dx dy offset transform class id href role ' +
    'fill fill-opacity fill-rule stroke stroke-width stroke-opacity stroke-dasharray stroke-dashoffset stroke-linecap ' +
    'stroke-linejoin stroke-miterlimit vector-effect opacity color font-family font-size font-weight font-style ' +
    'font-variant text-anchor dominant-baseline clip-path clip-rule marker-start marker-mid marker-end markerWidth ' +
    'markerHeight refX refY orient paint-order gradientUnits gradientTransform stop-color stop-opacity patternUnits ' +
    'patternTransform aria-label aria-hidden aria-labelledby aria-describedby aria-roledescription ' +
    'display mathvariant stretchy fence separator form lspace rspace columnalign rowspacing columnspacing displaystyle ' +
    'scriptlevel largeop movablelimits'
  ).split(' '),
);

/** Elements that go with all they hold, because what they hold is no drawing. */
const DROPPED_WHOLE: ReadonlySet<string> = new Set([
  'style',
  'script',
  'foreignObject',
  'foreignobject',
  'annotation',
]);

/** Longest text that is looked at, in characters. */
const MOST = 2_000_000;

const NAME = /<(\/?)([A-Za-z][\w:-]*)/y;
const ATTRIBUTE = /\s+([A-Za-z_][\w:.-]*)(?:\s*=\s*(?:"([^"<]*)"|'([^'<]*)'))?/y;
const TAG_END = /\s*(\/?)>/y;

/** Points only into the drawing itself. */
function isInside(name: string, value: string): boolean {
  if (name === 'href') return value.startsWith('#');
  if (name === 'xmlns') return /^http:\/\/www\.w3\.org\/(?:2000\/svg|1998\/Math\/MathML)$/.test(value);
  return !/(?:url|image|src)\s*\(\s*(?!\s*['"]?#)|javascript:|data:/i.test(value);
}

/** The drawing without anything that could run, load or leave; undefined where the text is no sound markup of one SVG or MathML element. */
export function inertMarkup(text: string): Markup | undefined {
  const source = text.trim();
  if (source.length > MOST || !/^<(?:svg|math)[\s>]/.test(source)) return undefined;
  const open: string[] = [];
  let dropping = 0;
  let out = '';
  let at = 0;
  while (at < source.length) {
    if (source[at] !== '<') {
      const end = source.indexOf('<', at);
      const words = source.slice(at, end < 0 ? source.length : end);
      if (open.length === 0) return undefined;
      if (dropping === 0) out += escaped(unescaped(words));
      at += words.length;
      continue;
    }
    NAME.lastIndex = at;
    const [start, closing, name = ''] = NAME.exec(source) ?? [];
    if (start === undefined || (open.length === 0 && at > 0)) return undefined;
    at += start.length;
    let attributes = '';
    for (;;) {
      ATTRIBUTE.lastIndex = at;
      const match = ATTRIBUTE.exec(source);
      if (!match) break;
      at += match[0].length;
      const key = match[1] ?? '';
      const value = unescaped(match[2] ?? match[3] ?? '');
      if (ATTRIBUTES.has(key) && isInside(key, value)) attributes += ` ${key}="${escaped(value)}"`;
    }
    TAG_END.lastIndex = at;
    const end = TAG_END.exec(source);
    if (!end) return undefined;
    at += end[0].length;
    const kept = ELEMENTS.has(name);
    if (closing === '/') {
      if (open.pop() !== name) return undefined;
      if (DROPPED_WHOLE.has(name)) dropping -= 1;
      else if (kept && dropping === 0) out += `</${name}>`;
      continue;
    }
    if (kept && dropping === 0) out += `<${name}${attributes}>${end[1] === '/' ? `</${name}>` : ''}`;
    if (end[1] === '/') continue;
    open.push(name);
    if (open.length > 200) return undefined;
    if (DROPPED_WHOLE.has(name)) dropping += 1;
  }
  return open.length === 0 ? new Markup(out) : undefined;
}
