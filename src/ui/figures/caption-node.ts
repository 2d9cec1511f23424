/** Captions as text elements: symbol slanted, its index lowered; and how wide they are before anything is painted. */

import { readSymbol } from '../../expression/index.ts';
import type { Caption } from './drawing.ts';
import { node, type SvgNode } from './svg-node.ts';

/** Height of the figures' text in pixels. */
export const TEXT = 13;
const ADVANCE = 0.53;

const plain = ({ symbol, text }: Caption): string => {
  const { base = '', index = '' } = symbol === undefined ? {} : readSymbol(symbol);
  return `${base}${index}${symbol === undefined ? '' : ' '}${text}`;
};

/** An estimate in pixels that errs on the wide side. */
export const captionWidth = (caption: Caption): number => plain(caption).length * TEXT * ADVANCE + 4;

/** Text at a point in pixels; `turn` in degrees. */
export function captionNode(
  caption: Caption,
  x: number,
  y: number,
  anchor: 'start' | 'middle' | 'end' = 'middle',
  turn = 0,
): SvgNode {
  const { symbol, text } = caption;
  const children: (SvgNode | string)[] = [];
  if (symbol !== undefined) {
    const { base, index } = readSymbol(symbol);
    children.push(node('tspan', { class: 'symbol' }, base));
    if (index !== undefined) {
      children.push(node('tspan', { class: 'index', dy: 3 }, index));
      children.push(node('tspan', { dy: -3 }, `\u2009 ${text}`));
    } else children.push(` ${text}`);
  } else children.push(text);
  return node(
    'text',
    {
      x,
      y,
      'text-anchor': anchor,
      ...(turn !== 0 && { transform: `rotate(${turn} ${x.toFixed(2)} ${y.toFixed(2)})` }),
    },
    ...children,
  );
}

/** Words broken into lines that fit a width in pixels. */
export function brokenLines(words: string, width: number): string[] {
  const most = Math.max(12, Math.floor(width / (TEXT * ADVANCE * 0.95)));
  const lines: string[] = [];
  let line = '';
  for (const word of words.split(' ')) {
    if (line !== '' && line.length + word.length + 1 > most) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return line === '' ? lines : [...lines, line];
}

const textOf = (part: SvgNode | string): string =>
  typeof part === 'string' ? part : part.children.map(textOf).join('');

export interface TextBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Where a text stands, in pixels: its width is an estimate on the wide side. */
export function textBox({ attributes, children }: SvgNode): TextBox {
  const long = children.map(textOf).join('').length * TEXT * ADVANCE + 4;
  const [x, y] = [Number(attributes['x']), Number(attributes['y'])];
  const anchor = attributes['text-anchor'];
  const before = anchor === 'end' ? long : anchor === 'middle' ? long / 2 : 0;
  return attributes['transform'] === undefined
    ? { left: x - before, right: x - before + long, top: y - TEXT, bottom: y + 4 }
    : { left: x - TEXT, right: x + 4, top: y - long / 2, bottom: y + long / 2 };
}

/** How far the words of a picture reach, in pixels. */
export function textExtent(nodes: readonly SvgNode[]): TextBox {
  const boxes = nodes.filter(({ tag }) => tag === 'text').map(textBox);
  return {
    left: Math.min(...boxes.map(({ left }) => left)),
    right: Math.max(...boxes.map(({ right }) => right)),
    top: Math.min(...boxes.map(({ top }) => top)),
    bottom: Math.max(...boxes.map(({ bottom }) => bottom)),
  };
}
