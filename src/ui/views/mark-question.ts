/** The question how the numbers of a table are written, with one of them in both readings. */

import { html, type TemplateResult } from 'lit';

interface Asked {
  readonly decimalMark: '.' | ',';
  readonly asksDecimalMark: boolean;
  readonly example?: { readonly text: string; readonly readings: readonly string[] };
}

const MARKS = [
  ['.', 'point'],
  [',', 'comma'],
] as const;

export function markQuestion(
  { example, decimalMark, asksDecimalMark }: Asked,
  choose: (mark: '.' | ',') => void,
): TemplateResult {
  const reading = (mark: '.' | ','): string =>
    example
      ? ` ${example.text} is ${example.text.includes(mark) ? example.readings[0] : example.readings[1]}`
      : '';
  return html`<fieldset class=${asksDecimalMark ? 'asked' : ''}>
    <legend>Decimal mark of the numbers${example ? `: ${example.text} has two readings` : ''}</legend>
    ${MARKS.map(
      ([mark, words]) =>
        html`<label
          ><input
            type="radio"
            name="mark"
            .checked=${!asksDecimalMark && decimalMark === mark}
            @change=${() => choose(mark)}
          />${words}:${reading(mark) || (mark === '.' ? ' 1.5' : ' 1,5')}</label
        >`,
    )}
  </fieldset>`;
}
