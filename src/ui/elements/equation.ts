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

function copied(from: Element): Element {
  const made = document.createElementNS(MATHML, from.localName);
  for (const { name, value } of from.attributes) if (ATTRIBUTES.has(name)) made.setAttribute(name, value);
  for (const child of from.childNodes) {
    if (child instanceof Element) {
      if (ELEMENTS.has(child.localName)) made.append(copied(child));
    } else if (child.nodeType === Node.TEXT_NODE) made.append(child.textContent ?? '');
  }
  return made;
}

/** `markup` makes the text acceptable to the parser where Trusted Types are enforced. */
export function equation(text: string, markup: (text: string) => string): Element | undefined {
  const wrapped = /^\s*<math[\s>]/.test(text) ? text : `<math>${text}</math>`;
  const parsed = new DOMParser().parseFromString(markup(wrapped), 'text/html').querySelector('math');
  if (!parsed) return undefined;
  const made = copied(parsed);
  made.setAttribute('display', 'block');
  return made;
}
