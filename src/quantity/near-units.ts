/** Suggestions for a unit that is not known (F4). */

import { knownSpellings, knownUnit } from './unit.ts';

/** Insertions, deletions, replacements and swaps of neighbours that part two texts. */
function distance(a: string, b: string): number {
  let [older, old]: [number[], number[]] = [[], Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1];
      let best = Math.min((row[j - 1] ?? 0) + 1, (old[j] ?? 0) + 1, (old[j - 1] ?? 0) + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        best = Math.min(best, (older[j - 2] ?? 0) + 1);
      }
      row.push(best);
    }
    [older, old] = [old, row];
  }
  return old[b.length] ?? 0;
}

const LOOKED_AT = 20;

/** Symbols near a text, nearest first, at most `most`; letters that differ only in case count half. */
export function nearUnits(text: string, currency?: string, most = 4): string[] {
  const wanted = text.trim().slice(0, LOOKED_AT);
  const lower = wanted.toLowerCase();
  const spellings = currency ? [...knownSpellings(), currency] : knownSpellings();
  const limit = wanted.length === 1 ? 0.5 : wanted.length === 2 ? 1 : 2;
  const found = new Map<string, number>();
  // Another currency's code: there is only the notebook's own (F22).
  if (/^[A-Z]{3}$/.test(wanted)) found.set(currency ?? 'money', 0.5);
  for (const spelling of spellings) {
    if (Math.abs(spelling.length - wanted.length) > limit) continue;
    const same = spelling.toLowerCase() === lower;
    const apart = same
      ? 0.5
      : Math.min(distance(wanted, spelling), distance(lower, spelling.toLowerCase()) + 0.5);
    const symbol = knownUnit(spelling, currency)?.symbol ?? spelling;
    if (apart <= limit && apart < (found.get(symbol) ?? Infinity)) found.set(symbol, apart);
  }
  return [...found]
    .sort((a, b) => a[1] - b[1])
    .slice(0, most)
    .map(([symbol]) => symbol);
}
