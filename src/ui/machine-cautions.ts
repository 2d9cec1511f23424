/** The usual cautions as they apply at this machine (common practice of the trade, no single source). */

import { contentOf, forEachCell, labelOf } from '../document/index.ts';
import type { Notebook } from '../document/index.ts';
import type { Session } from './session.ts';

const ALWAYS = [
  'Rotating tools and chips injure: guards closed, eyes protected.',
  'Never above the speed marked on tool, holder or machine.',
  'Prove new values out above the part at reduced feed.',
  'Starting values: local rules, the documents of machine and tool and a qualified person decide.',
] as const;

const BURNING = [
  {
    word: /titan|\bti-?6-?al/i,
    words: 'Titanium chips burn: keep them few, the right extinguisher at hand, no water.',
  },
  {
    word: /magnesi|\baz91|\bwe43/i,
    words: 'Magnesium chips burn: keep them few, the right extinguisher at hand, no water.',
  },
] as const;
const LONG = /overhang|stick-?out|projection length|free length|boring bar/i;
const BODY = 'Large cutter or long overhang: observe the speed limit of the body.';
/** A cutter body from this diameter on is called large here (m). */
const LARGE = 0.1;
/** Longer texts talk about something; shorter ones name it. */
const NAME_LENGTH = 60;

/** What the material and the tool of a notebook add to the cautions that always apply. */
export function addedCautions(notebook: Notebook): readonly string[] {
  const added = new Set<string>();
  for (const worksheet of notebook.worksheets)
    forEachCell(worksheet, (cell, row, column) => {
      const content = contentOf(cell, notebook.currency);
      if (content.type === 'formula' || (content.type === 'text' && content.text.length <= NAME_LENGTH)) {
        for (const { word, words } of BURNING)
          if (word.test(content.text) && !/burn/i.test(content.text)) added.add(words);
      }
      if (content.type !== 'quantity' || content.kind.name !== 'length') return;
      const label = labelOf(worksheet, row, column);
      if (LONG.test(label) || (/cutter|tool/i.test(label) && /diameter/i.test(label) && content.si >= LARGE))
        added.add(BODY);
    });
  return [...added];
}

const known = new WeakMap<Session, { readonly notebook: Notebook; readonly added: readonly string[] }>();

/** Those of material and tool first, then the ones that always apply. */
export function cautionsAtMachine(session: Session): {
  readonly added: readonly string[];
  readonly always: readonly string[];
} {
  const { notebook } = session;
  let seen = known.get(session);
  if (seen?.notebook !== notebook) {
    seen = { notebook, added: addedCautions(notebook) };
    known.set(session, seen);
  }
  return { added: seen.added, always: ALWAYS };
}
