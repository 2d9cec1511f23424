/** From what stands in the fields, and in the notebook's lists, to questions for the worker. */

import type { Distribution as AskedDistribution, StudyQuestion, SweepAxis } from '../../calculation/index.ts';
import { ownValues, partsOf, variantsOf } from '../../document/index.ts';
import type { Distribution, Notebook } from '../../document/index.ts';
import type { SearchForm, SolveForm, SpreadForm, SweepForm } from './what-if-state.ts';

export function variantsQuestion(notebook: Notebook): StudyQuestion {
  return {
    type: 'variants',
    variants: variantsOf(notebook).map((variant) => ({
      name: variant.title,
      contents: ownValues(notebook, variant).map(({ place, content }) => ({ cell: place, content })),
    })),
    watched: partsOf(notebook, 'watched').map(({ place }) => place),
  };
}

export const solveQuestion = ({ result, wanted, given, low, high }: SolveForm): StudyQuestion => ({
  type: 'solve',
  result,
  wanted,
  given: { cell: given, low, high },
});

export const searchQuestion = ({ result, aim, givens, constraints }: SearchForm): StudyQuestion => ({
  type: 'search',
  result,
  aim,
  givens: givens.map(({ place, low, high }) => ({ cell: place, low, high })),
  constraints: constraints.map(({ place, relation, limit }) =>
    relation === 'at most' ? { cell: place, atMost: limit } : { cell: place, atLeast: limit },
  ),
});

export const sweepQuestion = ({ givens, results }: SweepForm): StudyQuestion => ({
  type: 'sweep',
  axes: givens.map(({ place, range }): SweepAxis =>
    range.type === 'list'
      ? { cell: place, spacing: 'list', values: range.values }
      : { cell: place, spacing: range.type, from: range.from, to: range.to, points: range.count },
  ),
  results,
});

function askedDistribution(distribution: Distribution): AskedDistribution {
  switch (distribution.type) {
    case 'normal': {
      const { uncertainty, degrees } = distribution;
      return { shape: 'normal', uncertainty, ...(degrees !== undefined && { freedom: degrees }) };
    }
    case 'sample':
      return { shape: 'measured', ...distribution.from };
    case 'uniform':
    case 'triangular':
      return { shape: distribution.type, half: distribution.halfWidth };
  }
}

export const spreadQuestion = (notebook: Notebook, form: SpreadForm): StudyQuestion => ({
  type: 'spread',
  givens: partsOf(notebook, 'spreads').map(({ place, distribution }) => ({
    cell: place,
    distribution: askedDistribution(distribution),
  })),
  results: form.results,
  samples: form.samples,
  seed: form.seed,
});
