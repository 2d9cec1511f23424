/** The rules of axe-core over a page as it stands: WCAG 2.2 AA, text at 7:1. */

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Finding {
  readonly id: string;
  readonly nodes: readonly { readonly target: unknown; readonly failureSummary?: string }[];
}
interface Axe {
  run(where: Document, options: unknown): Promise<{ readonly violations: readonly Finding[] }>;
}

/** Words of each finding, at most three places a rule; none where all is well. */
export async function axeFindings(page: Page): Promise<readonly string[]> {
  await page.evaluate(source);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as { readonly axe: Axe };
    const { violations } = await axe.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'],
      rules: { 'color-contrast-enhanced': { enabled: true } },
      resultTypes: ['violations'],
    });
    return violations.flatMap(({ id, nodes }) =>
      nodes
        .slice(0, 3)
        .map(({ target, failureSummary }) => `${id}: ${JSON.stringify(target)} ${failureSummary ?? ''}`),
    );
  });
}
