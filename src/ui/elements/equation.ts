/** MathML text to elements: only the presentation elements and attributes that formulas need, everything else is dropped. */

const MATHML = 'http://www.w3.org/1998/Math/MathML';
const ELEMENTS = new Set([
  'math', 'mrow', 'mi', 'mn', 'mo', 'ms', 'mtext', 'mspace', 'mfrac', 'msqrt', 'mroot', 'msub', 'msup', 'msubsup',
  'munder', 'mover', 'munderover', 'mtable', 'mtr', 'mtd', 'mfenced', 'mpadded', 'mstyle', 'semantics',
]); // prettier-ignore
const ATTRIBUTES = new Set([
  'display', 'mathvariant', 'stretchy', 'fence', 'separator', 'form', 'lspace', 'rspace', 'width', 'columnalign',
  'rowspacing', 'columnspacing', 'displaystyle', 'scriptlevel', 'linebreak', 'intent', 'arg', 'largeop', 'movablelimits',
]); // prettier-ignore

/** Deeper trees take a browser seconds to lay out: they are said instead of set. */
const DEEPEST = 90;

/** A sum of sums begins with a row in a row: it is one row, looks alike, and is laid out in no time. */
const isOneRow = (parent: Element, child: Element): boolean =>
  parent.localName === 'mrow' &&
  child.localName === 'mrow' &&
  child === parent.firstElementChild &&
  child.firstElementChild?.localName !== 'mo';

function fill(made: Element, from: Element, depth: number): number {
  let deepest = depth;
  for (const child of from.childNodes) {
    if (child.nodeType === Node.TEXT_NODE) made.append(child.textContent ?? '');
    if (!(child instanceof Element) || !ELEMENTS.has(child.localName)) continue;
    if (isOneRow(from, child)) {
      deepest = Math.max(deepest, fill(made, child, depth));
      continue;
    }
    const part = bare(child);
    made.append(part);
    deepest = Math.max(deepest, fill(part, child, depth + 1));
  }
  return deepest;
}

/** The element with its known attributes, without what is in it. */
function bare(from: Element): Element {
  const made = document.createElementNS(MATHML, from.localName);
  for (const { name, value } of from.attributes) if (ATTRIBUTES.has(name)) made.setAttribute(name, value);
  return made;
}

/** `markup` makes the text acceptable to the parser where Trusted Types are enforced. */
export function equation(text: string, markup: (text: string) => string): Element | undefined {
  const wrapped = /^\s*<math[\s>]/.test(text) ? text : `<math>${text}</math>`;
  const parsed = new DOMParser().parseFromString(markup(wrapped), 'text/html').querySelector('math');
  if (!parsed) return undefined;
  const made = bare(parsed);
  if (fill(made, parsed, 0) > DEEPEST) {
    const words = document.createElementNS(MATHML, 'mtext');
    words.append('nested too deeply to be set as an equation');
    made.replaceChildren(words);
  }
  made.setAttribute('display', 'block');
  return made;
}
