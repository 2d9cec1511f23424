/** The results a question looks at: one field each, another one, and the way to leave one out. */

import { html, nothing, type TemplateResult } from 'lit';
import type { CellPlace } from '../../../document/index.ts';
import type { Session } from '../../session.ts';
import { keyOf, placeOfKey, workedOf } from '../../what-if/candidate-cells.ts';
import { cellField } from '../../what-if/field.ts';

/** Takes one row of a list away. */
export const leaveOut = <Row>(
  rows: readonly Row[],
  at: number,
  take: (rows: readonly Row[]) => void,
): TemplateResult =>
  html`<button class="link" @click=${() => take(rows.toSpliced(at, 1))}>leave it out</button>`;

/** The same where at least one has to stay. */
export const leaveOutOfMany = <Row>(
  rows: readonly Row[],
  at: number,
  take: (rows: readonly Row[]) => void,
): TemplateResult | typeof nothing => (rows.length > 1 ? leaveOut(rows, at, take) : nothing);

export function resultsFields(
  session: Session,
  results: readonly CellPlace[],
  take: (results: readonly CellPlace[]) => void,
): TemplateResult {
  const worked = workedOf(session);
  const taken = new Set(results.map(keyOf));
  const free = worked.find(({ key }) => !taken.has(key));
  return html`<fieldset>
    <legend>results</legend>
    ${results.map(
      (place, at) =>
        html`<div class="one">
          ${cellField(`${at + 1}`, worked, keyOf(place), (key) => {
            const chosen = placeOfKey(key);
            if (chosen) take(results.with(at, chosen));
          })}
          ${leaveOutOfMany(results, at, take)}
        </div>`,
    )}
    <button ?disabled=${!free} @click=${() => free && take([...results, free.place])}>Another result</button>
  </fieldset>`;
}
