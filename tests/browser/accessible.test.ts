/** What a screen reader and a keyboard need, looked over by an independent rule set (axe-core). */

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { afterAll, afterEach, expect, test } from 'vitest';
import { closeBrowser, enter, newNotebook, openDesk, shows, type Desk } from './desk.ts';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Finding {
  readonly id: string;
  readonly nodes: readonly { readonly target: unknown; readonly failureSummary?: string }[];
}
interface Axe {
  run(where: Document, options: unknown): Promise<{ readonly violations: readonly Finding[] }>;
}

let desk: Desk | undefined;
afterEach(async () => {
  await desk?.close();
  desk = undefined;
});
afterAll(closeBrowser);

async function findings(theme: 'light' | 'dark', prepare: (desk: Desk) => Promise<void>): Promise<string[]> {
  desk = await openDesk();
  await desk.context.addInitScript(axe);
  await desk.context.addInitScript((look: string) => localStorage.setItem('theme', look), theme);
  await desk.page.reload();
  await prepare(desk);
  const violations = await desk.page.evaluate(async () => {
    const { axe: rules } = globalThis as unknown as { readonly axe: Axe };
    const { violations: found } = await rules.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa'],
      rules: { 'color-contrast-enhanced': { enabled: true } },
      resultTypes: ['violations'],
    });
    return found.map(({ id, nodes }) => ({
      id,
      nodes: nodes.map((node) => `${JSON.stringify(node.target)} ${node.failureSummary ?? ''}`),
    }));
  });
  return violations.flatMap(({ id, nodes }) => nodes.slice(0, 3).map((node) => `${id}: ${node}`));
}

async function worksheet({ page }: Desk): Promise<void> {
  await newNotebook(page);
  await enter(page, 'A1', 'cutter diameter');
  await enter(page, 'B1', '50 mm');
  await enter(page, 'B2', '=MILL.THINNING(B1; 0.2 mm)');
  await enter(page, 'B3', '=B1+1 min');
  await shows(page, 'B3', '#UNIT!');
}

for (const theme of ['light', 'dark'] as const) {
  test(`the first page has no finding in the ${theme} theme`, async () => {
    expect(await findings(theme, async ({ page }) => page.getByText('Worked examples').waitFor())).toEqual(
      [],
    );
  });
  test(`a worksheet with values, a caution and an error has no finding in the ${theme} theme`, async () => {
    expect(await findings(theme, worksheet)).toEqual([]);
  });
}
