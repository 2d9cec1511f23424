/** What a trial tells, sentence by sentence: for a report and for print. */

import type { TrialReading } from './read-trial.ts';

/** Lives of the variants that were cut, comparisons, Taylor, and what weakens all of it. Nothing where nothing was cut. */
export function findingsOf({
  variants,
  edges,
  comparisons,
  taylor,
  cautions,
}: TrialReading): readonly string[] {
  if (edges.length === 0) return [];
  const cut = variants.filter((variant) => variant.edges.length > 0);
  const compared = comparisons.filter(({ a, b }) =>
    [a, b].every((at) => (variants[at]?.edges.length ?? 0) > 0),
  );
  return [
    ...cut.map(({ title, life }) => `Life, ${title}: ${life.words}.`),
    ...compared.map(({ sentence }) => sentence),
    ...taylor.map(({ title, words }) => `Taylor's law, ${title}: ${words}.`),
    ...cautions,
  ];
}
