/** Figures as files that stand alone: SVG with its rules and faces inside, PNG painted from it. */

import { FIGURE_RULES, FILE_VARIABLES } from './figure.styles.ts';

const SVG = 'http://www.w3.org/2000/svg';
/** Of a PNG: sharp on paper at the size it has on the screen. */
const PIXEL_RATIO = 3;
const MARGIN = 12;

const FACE = /Atkinson Hyperlegible Next/;

/** The page's own faces as text that needs no other file. */
async function faces(): Promise<string> {
  const rules = [...document.styleSheets].flatMap((sheet) => {
    try {
      return [...sheet.cssRules].filter((rule) => rule instanceof CSSFontFaceRule);
    } catch {
      return [];
    }
  });
  const made = rules.map(async (rule) => {
    const { style, parentStyleSheet } = rule;
    const address = /url\("?([^")]+)"?\)/.exec(style.getPropertyValue('src'))?.[1];
    if (!FACE.test(style.getPropertyValue('font-family')) || address === undefined) return '';
    const bytes = new Uint8Array(
      await (await fetch(new URL(address, parentStyleSheet?.href ?? location.href))).arrayBuffer(),
    );
    let text = '';
    for (const byte of bytes) text += String.fromCharCode(byte);
    const weight = style.getPropertyValue('font-weight') || '400';
    const slant = style.getPropertyValue('font-style') || 'normal';
    return `@font-face { font-family: 'Atkinson Hyperlegible Next'; font-weight: ${weight}; font-style: ${slant}; src: url(data:font/woff2;base64,${btoa(text)}) format('woff2'); }`;
  });
  return (await Promise.all(made)).join('\n');
}

const element = (tag: string, attributes: Readonly<Record<string, string>>, text = ''): SVGElement => {
  const made = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  made.textContent = text;
  return made;
};

const sizeOf = (picture: SVGElement): readonly [number, number] => [
  Number(picture.getAttribute('width')),
  Number(picture.getAttribute('height')),
];

/** The text of an SVG file: black on white, title and words inside. */
export async function svgFile(picture: SVGElement, title: string, words: string): Promise<string> {
  const [width, height] = sizeOf(picture);
  const [wide, high] = [width + 2 * MARGIN, height + 2 * MARGIN + 24];
  const file = element('svg', {
    class: 'figure',
    width: String(wide),
    height: String(high),
    viewBox: `0 0 ${wide} ${high}`,
    role: 'img',
  });
  const inside = picture.cloneNode(true) as SVGElement;
  inside.setAttribute('x', String(MARGIN));
  inside.setAttribute('y', String(MARGIN + 24));
  const heading = element('text', { x: String(MARGIN), y: String(MARGIN + 12), class: 'heading' }, title);
  file.append(
    element('title', {}, title),
    element('desc', {}, words),
    element('style', {}, `${await faces()}\n${FILE_VARIABLES}${FIGURE_RULES}`),
    element('rect', { class: 'sheet', width: '100%', height: '100%', fill: '#fff' }),
    heading,
    inside,
  );
  return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(file)}\n`;
}

/** The same painted, three pixels for one. Throws in words where the browser can not paint it. */
export async function pngFile(svg: string): Promise<Blob> {
  const image = new Image();
  const address = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    image.src = address;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = image.naturalWidth * PIXEL_RATIO;
    canvas.height = image.naturalHeight * PIXEL_RATIO;
    const pen = canvas.getContext('2d');
    if (!pen) throw new Error('this browser has no canvas');
    pen.drawImage(image, 0, 0, canvas.width, canvas.height);
    return await new Promise((resolve, reject) => {
      canvas.toBlob(
        (blob) => (blob ? resolve(blob) : reject(new Error('the picture could not be painted'))),
        'image/png',
      );
    });
  } finally {
    URL.revokeObjectURL(address);
  }
}
