/** Constants and inline arrays: signed numbers, texts and logicals in rows of the same length (F25). */

import type { SyntaxReading } from './syntax-reading.ts';
import type { ArrayNode, LogicalNode, NumberNode, TextNode } from './tree.ts';

type Element = ArrayNode['rows'][number][number];

export function parseNumber(reading: SyntaxReading): NumberNode {
  const { value, from, to } = reading.next() ?? { value: '0', from: reading.end, to: reading.end };
  return reading.made({ type: 'number', digits: value, value: Number(value), from, to });
}

export function parseText(reading: SyntaxReading): TextNode {
  const token = reading.next();
  const { value, from, to } = token ?? { value: '', from: reading.end, to: reading.end };
  if (token?.unfinished)
    reading.report(token, 'the text is not closed; a quotation mark is missing at its end', true);
  return reading.made({ type: 'text', value, from, to });
}

export function parseLogical(reading: SyntaxReading): LogicalNode {
  const { value, from, to } = reading.next() ?? { value: '', from: reading.end, to: reading.end };
  return reading.made({ type: 'logical', value: value === 'TRUE', from, to });
}

/** One element; undefined where none stands, which is reported. */
function parseElement(reading: SyntaxReading): Element | undefined {
  const token = reading.peek();
  if (!token) {
    reading.report(undefined, 'the array is not closed; a } is missing');
    return undefined;
  }
  switch (token.type) {
    case 'number':
      return parseNumber(reading);
    case 'text':
      return parseText(reading);
    case 'logical':
      return parseLogical(reading);
    case 'operator':
      if ((token.value === '-' || token.value === '+') && reading.is('number', 1)) {
        reading.next();
        const operand = parseNumber(reading);
        return reading.made({
          type: 'unary',
          operator: token.value,
          operand,
          from: token.from,
          to: operand.to,
        });
      }
  }
  if (token.type === 'closeArray' || token.type === 'separator' || token.type === 'row') {
    reading.report(token, 'an element of the array is missing before it: {1;2|3;4}');
    return undefined;
  }
  reading.report(
    token,
    token.wrong ?? 'an array holds numbers, texts, TRUE and FALSE, parted by ; and rows by |',
  );
  skipElement(reading);
  return undefined;
}

function skipElement(reading: SyntaxReading): void {
  const ends = () => reading.is('separator') || reading.is('row') || reading.is('closeArray');
  while (reading.peek() && !ends() && !reading.is('close')) reading.next();
}

export function parseArray(reading: SyntaxReading): ArrayNode | undefined {
  const opening = reading.next();
  if (!opening) return undefined;
  return reading.nested(opening, (): ArrayNode => {
    const rows: Element[][] = [[]];
    for (;;) {
      const element = parseElement(reading);
      if (element) rows.at(-1)?.push(element);
      if (reading.is('unit')) {
        reading.report(reading.peek(), 'the unit of an array stands behind its brace: {1;2} mm');
        skipElement(reading);
      }
      if (reading.is('row')) rows.push([]);
      else if (!reading.is('separator')) break;
      reading.next();
    }
    const width = rows[0]?.length ?? 0;
    const uneven = rows.findIndex((row) => row.length !== width);
    if (reading.is('closeArray')) reading.next();
    else reading.report(reading.peek(), 'a } is missing that closes the array');
    if (uneven > 0) {
      const counts = `row ${uneven + 1} has ${rows[uneven]?.length} and row 1 has ${width}`;
      reading.report(opening, `all rows of an array are equally long; ${counts}`);
    }
    return reading.made({ type: 'array', rows, from: opening.from, to: reading.lastEnd() });
  });
}
