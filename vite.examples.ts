/** The shipped notebooks' titles and questions at build time, so that the start page can tell them before any is loaded. */

import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

interface Sheet {
  readonly title: string;
  readonly worksheets: readonly { readonly cells: Readonly<Record<string, { readonly content: string }>> }[];
}

const MODULE = 'virtual:examples';

/** Gives `virtual:examples`: for each file of the folder its path, its title, and the question in its first cell. */
export const examples = (home: string): Plugin => ({
  name: 'examples',
  resolveId: (id) => (id === MODULE ? `\0${MODULE}` : null),
  load(id) {
    if (id !== `\0${MODULE}`) return null;
    const list = readdirSync(join(home, 'sheets'))
      .filter((file) => file.endsWith('.json'))
      .map((file) => {
        const path = join(home, 'sheets', file);
        this.addWatchFile(path);
        const { title, worksheets } = JSON.parse(readFileSync(path, 'utf8')) as Sheet;
        return { path: `/sheets/${file}`, title, question: worksheets[0]?.cells['A1']?.content ?? '' };
      })
      .sort((a, b) => a.title.localeCompare(b.title, 'en'));
    return `export const EXAMPLES = ${JSON.stringify(list)};`;
  },
});
