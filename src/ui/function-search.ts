/** Finding functions by the words of the trade. */

import { FAMILIES } from '../definition/index.ts';
import type { Catalogue } from './ports.ts';

export interface FoundFunction {
  readonly name: string;
  readonly summary: string;
}

const BUILT_IN = 'built-in';

/** Headings of the families, in the order of the list. */
export const FAMILY_TITLES: ReadonlyMap<string, string> = new Map([
  ...FAMILIES.map(({ name, title }) => [name, title] as const),
  [BUILT_IN, 'General arithmetic, text, statistics, look-up'],
]);

interface Searchable extends FoundFunction {
  readonly family: string;
  readonly text: string;
}

/** All functions by family; with words, those in which every word occurs, the best first. */
export function searchFunctions(
  catalogue: Catalogue | undefined,
  wanted: string,
): readonly { readonly family: string; readonly found: readonly FoundFunction[] }[] {
  if (!catalogue) return [];
  const all: Searchable[] = [
    ...catalogue.domain.map((each) => ({
      name: each.name,
      summary: each.summary,
      family: each.family,
      text: [
        each.name,
        each.summary,
        each.searchWords.join(' '),
        each.parameters
          .map((parameter) => `${parameter.name.replaceAll('_', ' ')} ${parameter.symbol}`)
          .join(' '),
        each.result.meaning,
      ]
        .join(' ')
        .toLowerCase(),
    })),
    ...catalogue.builtins.map((each) => ({
      name: each.name,
      summary: each.summary,
      family: BUILT_IN,
      text: `${each.name} ${each.summary} ${each.searchWords.join(' ')}`.toLowerCase(),
    })),
  ];
  const words = wanted
    .toLowerCase()
    .split(/[\s,_.]+/)
    .filter(Boolean);
  const score = ({ name, summary, text }: Searchable): number => {
    let sum = 0;
    for (const word of words) {
      if (!text.includes(word)) return 0;
      sum += name.toLowerCase().includes(word) ? 4 : summary.toLowerCase().includes(word) ? 3 : 1;
    }
    return sum;
  };
  const ranked =
    words.length === 0
      ? all
      : all
          .map((each) => ({ each, rank: score(each) }))
          .filter(({ rank }) => rank > 0)
          .sort((a, b) => b.rank - a.rank)
          .map(({ each }) => each);
  const inOrder = words.length === 0 ? [...FAMILY_TITLES.keys()] : [];
  const families = new Map<string, FoundFunction[]>(inOrder.map((family) => [family, []]));
  for (const each of ranked) {
    const group = families.get(each.family);
    if (group) group.push(each);
    else families.set(each.family, [each]);
  }
  return [...families].map(([family, found]) => ({ family, found })).filter(({ found }) => found.length > 0);
}
