/** A worked value on the machine-side page: large, with its limit as a bar, its decision as words. */

import { html, nothing, svg, type TemplateResult } from 'lit';
import type { Notebook } from '../../document/index.ts';
import { symbolParts } from '../faces.ts';
import { limitsText, shareOfLimit } from '../machine-cells.ts';
import type { MachineCell } from '../machine-cells.ts';
import { inWords } from '../number-locale.ts';
import { numberText, resultText } from '../value-text.ts';

/** The symbol of a cell's name; words stay away: they would only repeat the label. */
export function symbolOf({ symbol }: MachineCell): TemplateResult | typeof nothing {
  const [base, index] = symbolParts(symbol);
  if ([...base].length !== 1) return nothing;
  return html`<span class="symbol">${base}${index === '' ? nothing : html`<sub>${index}</sub>`}</span>`;
}

/** The limit stands at this share of the bar, so that there is room to see how far it is passed. */
const LIMIT_AT = 80;

function meter(share: number, words: string): TemplateResult {
  const passed = share > 1 + 1e-13;
  const width = Math.min(share * LIMIT_AT, 100);
  return html`<svg class="meter" role="img" aria-label=${words}>
    ${svg`<rect class="track" y="8" width="100%" height="12" rx="3" />
    <rect class="fill ${passed ? 'passed' : ''}" y="8" width="${width}%" height="12" rx="3" />
    <rect class="limit" x="${LIMIT_AT}%" y="0" width="5" height="26" />`}
  </svg>`;
}

const TICK = svg`<path d="M3 14l8 9L27 3" />`;
const CROSS = svg`<path d="M5 3l20 20M25 3L5 23" />`;

/** A text that begins with yes or no gets a mark of its own besides the words; no tick while a limit is passed. */
function decision(text: string, sound: boolean): TemplateResult {
  const [word = ''] = /^(?:yes|no)\b/i.exec(text) ?? [];
  const said = word.toLowerCase();
  const answer = said === 'yes' && !sound ? '' : said;
  return html`<div class="decision ${answer}">
    ${answer === '' ? nothing : html`<svg viewBox="0 0 30 26" aria-hidden="true">${answer === 'yes' ? TICK : CROSS}</svg>`}${text}
  </div>`;
}

/** `sound`: no error and no limit passed in any value of the page. */
export function machineResult(one: MachineCell, notebook: Notebook, sound: boolean): TemplateResult {
  const { result, cell, label } = one;
  const marks = (result?.cautions ?? []).filter(({ type }) => type !== 'assumed');
  const breaches = marks.filter(({ type }) => type === 'breach').map(({ text }) => inWords(text));
  const open = marks.some(({ acknowledged }) => acknowledged === undefined);
  const sign = open
    ? html`<span class="sign ${breaches.length > 0 ? 'passed' : ''}" role="img" aria-label="caution">▲</span>`
    : nothing;
  const isNumber = typeof result?.value === 'number' && result.kind !== 'date' && !result.error;
  const share = shareOfLimit(one, notebook.currency);
  const limits = isNumber ? limitsText(cell, notebook.currency) : '';
  const own = cell.limits?.highText ?? cell.limits?.lowText ?? '';
  const words = limits === '' ? '' : `${limits}${own === '' ? '' : ` (${own})`}`;
  const look = result?.error ? 'refused' : '';
  return html`<div class="result ${isNumber ? '' : 'wide'} ${look}" data-cell=${one.address}>
    <div class="name">${label}${symbolOf(one)}</div>
    ${value(one, notebook, sign, sound)}
    ${share === undefined ? nothing : meter(share, `${Math.round(share * 100)} % of the limit`)}
    ${breaches.length > 0 ? html`<p class="passed">▲ ${breaches.join('; ')}</p>` : words ? html`<p>${words}</p>` : nothing}
  </div>`;
}

function value(
  { result, cell }: MachineCell,
  notebook: Notebook,
  sign: TemplateResult | typeof nothing,
  sound: boolean,
): TemplateResult {
  if (!result) return html`<div class="number" aria-label="being worked out">…</div>`;
  if (result.error)
    return html`<div class="wrong">▲ ${result.error.code} ${inWords(result.error.message)}</div>`;
  if (typeof result.value === 'number' && result.kind !== 'date') {
    const { number, unit } = numberText(result.value, result.unit, notebook, cell.format);
    return html`<div class="number">
      ${sign}${number}${unit === '' ? nothing : html`<span class="unit">${` ${unit}`}</span>`}
    </div>`;
  }
  return html`${sign}${decision(resultText(result, notebook), sound)}`;
}

/** Texts decide, so they stand above the numbers. */
export const decisionsFirst = (cells: readonly MachineCell[]): readonly MachineCell[] => [
  ...cells.filter(({ result }) => typeof result?.value === 'string'),
  ...cells.filter(({ result }) => typeof result?.value !== 'string'),
];
