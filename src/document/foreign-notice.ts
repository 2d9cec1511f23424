/** What may read otherwise in cells that came from another notebook. */

import { titleText } from '../expression/index.ts';
import { referencesInText } from './formula-references.ts';
import { worksheetTitled } from './cells.ts';
import type { Notebook } from './notebook.ts';

/** Words about plain numbers read in another unit system, another currency, worksheets that are not here; undefined where all is well. */
export function foreignNotice(
  from: Notebook,
  to: Notebook,
  contents: readonly string[],
  what: string,
): string | undefined {
  const words: string[] = [];
  if (from.reading !== to.reading) {
    words.push(
      `Plain numbers given to functions were read as ${from.reading} there and are read as ${to.reading} here: check ${what}.`,
    );
  }
  if (from.currency !== to.currency && contents.some((content) => content.includes(from.currency))) {
    words.push(
      `It names ${from.currency}; this notebook reckons in ${to.currency}. Currencies do not convert.`,
    );
  }
  const missing = new Set<string>();
  for (const content of contents) {
    for (const { worksheet } of referencesInText(content)) {
      if (worksheet !== undefined && !worksheetTitled(to, worksheet)) missing.add(worksheet);
    }
  }
  if (missing.size > 0) {
    words.push(`It refers to what is not here: ${[...missing].map(titleText).join(', ')}.`);
  }
  return words.length > 0 ? words.join(' ') : undefined;
}
