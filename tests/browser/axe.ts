/** The rules of axe-core over a page as it stands: WCAG 2.2 AA, text at 7:1. The one place that says which. */

import axe from 'axe-core';
import type { Page } from 'playwright-core';

const LEVELS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];
const CONTRAST = ['color-contrast', 'color-contrast-enhanced'];
/** Places a rule names at most. */
const MOST = 3;

/** Words of each finding; none where all is well. */
export const axeFindings = (page: Page): Promise<readonly string[]> =>
  found(page, {
    runOnly: { type: 'tag', values: LEVELS },
    rules: { 'color-contrast-enhanced': { enabled: true } },
  });

/** Only what depends on the colours: for a second look at a state whose first one was complete. */
export const contrastFindings = (page: Page): Promise<readonly string[]> =>
  found(page, { runOnly: { type: 'rule', values: CONTRAST } });

async function found(page: Page, options: axe.RunOptions): Promise<readonly string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source);
  return page.evaluate(
    async ({ most, ...given }) => {
      const { axe: rules, seenCells = new Set<string>() } = globalThis as unknown as {
        readonly axe: typeof axe;
        readonly seenCells?: Set<string>;
      };
      const find = (root: ParentNode, what: string): Element | undefined => {
        for (const each of root.querySelectorAll('*')) {
          const inside = each.shadowRoot ? find(each.shadowRoot, what) : undefined;
          if (inside ?? each.matches(what)) return inside ?? each;
        }
        return undefined;
      };
      // Behind a dialog nothing can be reached; and the same cells in the same colours are gone through once: they are most of the work.
      const dialog = find(document, 'dialog:modal');
      const cells = find(document, 'page-grid');
      const key = `${JSON.stringify(given)} ${document.documentElement.dataset['theme'] ?? ''} ${cells?.shadowRoot?.innerHTML ?? ''}`;
      const known = cells !== undefined && seenCells.has(key);
      const where = dialog ?? (known ? { include: document, exclude: cells } : document);
      if (!dialog) Object.assign(globalThis, { seenCells: seenCells.add(key) });
      const { violations } = await rules.run(where, { ...given, resultTypes: ['violations'] });
      return violations.flatMap(({ id, nodes }) =>
        nodes
          .slice(0, most)
          .map(({ target, failureSummary }) => `${id}: ${JSON.stringify(target)} ${failureSummary ?? ''}`),
      );
    },
    { ...options, most: MOST },
  );
}
