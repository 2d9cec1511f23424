/** Elements of a picture as data, and as elements of the page: attributes and text only, no style attribute, no markup text. */

export interface SvgNode {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly (SvgNode | string)[];
}

export const node = (
  tag: string,
  attributes: SvgNode['attributes'],
  ...children: readonly (SvgNode | string)[]
): SvgNode => ({ tag, attributes, children });

const NAMESPACE = 'http://www.w3.org/2000/svg';

/** The same as an element; numbers are written to a hundredth. */
export function svgElement({ tag, attributes, children }: SvgNode): SVGElement {
  const element = document.createElementNS(NAMESPACE, tag);
  for (const [name, value] of Object.entries(attributes))
    element.setAttribute(name, typeof value === 'number' ? String(Math.round(value * 100) / 100) : value);
  for (const child of children) element.append(typeof child === 'string' ? child : svgElement(child));
  return element;
}
