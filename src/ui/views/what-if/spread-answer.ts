/** What the spread of the givens does to each result: intervals, histogram, shares, the chance that a limit is passed. */

import { html, nothing, svg, type TemplateResult } from 'lit';
import type { SpreadResult, StudyAnswer } from '../../../calculation/index.ts';
import type { Session } from '../../session.ts';
import { resultText } from '../../value-text.ts';
import { cellWords } from '../../what-if/candidate-cells.ts';
import '../../elements/share-bar.ts';
import { differenceUnit } from '../../what-if/difference-unit.ts';

type Spread = Extract<StudyAnswer, { readonly type: 'spread' }>;

export function spreadAnswer(session: Session, { samples, seed, results }: Spread): TemplateResult {
  return html`${results.map((result) => resultWords(session, result))}
    <p class="second">
      ${samples} samples, seed ${seed}: the same seed gives the same numbers. Simulation as in JCGM 101, first
      order as in JCGM 100.
    </p>`;
}

const percent = (share: number): string =>
  Number.isFinite(share) ? `${(share * 100).toFixed(share < 0.095 ? 1 : 0)} %` : 'not known';

function resultWords(session: Session, result: SpreadResult): TemplateResult {
  const text = (value: number): string =>
    resultText({ value, unit: result.unit }, session.notebook, { type: 'significant', digits: 4 });
  const width = (value: number): string =>
    resultText({ value, unit: differenceUnit(result.unit) }, session.notebook, {
      type: 'significant',
      digits: 3,
    });
  const { simulated, firstOrder, base, failures, failureWords, contributions, breaches } = result;
  return html`<section aria-label=${cellWords(session, result.cell)}>
    <h3>${cellWords(session, result.cell)}</h3>
    ${
      simulated
        ? html`${histogram(session, result)}
            <dl>
              <dt>as it stands</dt>
              <dd>${base === null ? 'no number' : text(base)}</dd>
              <dt>mean</dt>
              <dd>${text(simulated.mean)}</dd>
              <dt>standard uncertainty</dt>
              <dd>${width(simulated.uncertainty)}</dd>
              <dt>95 %, shortest</dt>
              <dd>${text(simulated.shortest.low)} to ${text(simulated.shortest.high)}</dd>
              <dt>95 %, symmetric</dt>
              <dd>${text(simulated.symmetric.low)} to ${text(simulated.symmetric.high)}</dd>
              ${
                firstOrder
                  ? html`<dt>first order</dt>
                      <dd>${text(firstOrder.value)} ± ${width(firstOrder.expanded)}</dd>`
                  : nothing
              }
            </dl>`
        : html`<p>▲ Too few samples gave a number.</p>`
    }
    ${breaches.map(
      ({ words, probability }) =>
        html`<p class=${probability >= 0.05 ? 'caution' : 'second'}>
          ${probability >= 0.05 ? '▲ ' : ''}${percent(probability)} chance to be ${words}
        </p>`,
    )}
    ${failures > 0 ? html`<p class="caution">▲ ${failures} samples have no number${failureWords ? `: ${failureWords}` : ''}.</p>` : nothing}
    ${
      contributions.length > 0
        ? html`<h3>What makes it unsure</h3>
            <ul class="plain">
              ${contributions.map(
                ({ cell, share, simulated: gone }) =>
                  html`<li>
                    <div class="row"><span>${cellWords(session, cell)}</span><b>${percent(share)}</b></div>
                    <share-bar .share=${share}></share-bar>
                    <span class="second">by simulation ${percent(gone)}</span>
                  </li>`,
              )}
            </ul>`
        : nothing
    }
  </section>`;
}

const WIDTH = 300;
const HEIGHT = 90;

/** Bars of the samples; those outside the shortest interval are paler, limits are dashed. */
function histogram(
  session: Session,
  { simulated, unit, breaches }: SpreadResult,
): TemplateResult | typeof nothing {
  if (!simulated) return nothing;
  const { histogram: bins, shortest, mean } = simulated;
  const most = Math.max(...bins.counts);
  const span = bins.width * bins.counts.length;
  if (!(span > 0) || most === 0) return nothing;
  const x = (value: number): number => ((value - bins.from) / span) * WIDTH;
  const text = (value: number): string =>
    resultText({ value, unit }, session.notebook, { type: 'significant', digits: 3 });
  const width = WIDTH / bins.counts.length;
  const limits = breaches.filter(({ limit }) => x(limit) >= 0 && x(limit) <= WIDTH);
  return html`<svg
    viewBox="-2 -4 ${WIDTH + 4} ${HEIGHT + 22}"
    role="img"
    aria-label="histogram from ${text(bins.from)} to ${text(bins.from + span)}; 95 % lie between ${text(shortest.low)} and ${text(shortest.high)}"
  >
    ${bins.counts.map((count, at) => {
      const middle = bins.from + (at + 0.5) * bins.width;
      const inside = middle >= shortest.low && middle <= shortest.high;
      const height = (count / most) * HEIGHT;
      return svg`<rect class=${inside ? 'column' : 'outside'} x=${(at * width).toFixed(2)} y=${(HEIGHT - height).toFixed(2)} width=${Math.max(0.5, width - 1).toFixed(2)} height=${height.toFixed(2)} />`;
    })}
    <line class="line" x1="0" x2=${WIDTH} y1=${HEIGHT} y2=${HEIGHT} />
    <line class="line" x1=${x(mean)} x2=${x(mean)} y1=${HEIGHT} y2=${HEIGHT + 5} />
    ${limits.map(({ limit }) => svg`<line class="limit" x1=${x(limit)} x2=${x(limit)} y1="-4" y2=${HEIGHT} />`)}
    <text x="0" y=${HEIGHT + 16}>${text(bins.from)}</text>
    <text x=${WIDTH} y=${HEIGHT + 16} text-anchor="end">${text(bins.from + span)}</text>
  </svg>`;
}
