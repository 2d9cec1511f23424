/** What a screen reader, a finger, a keyboard and a weak eye need: looked over in every state by an independent rule set (axe-core), measured, and tried. */

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, expect, test } from 'vitest';
import { closeBrowser, openDesk, type Desk } from './desk.ts';
import { walk } from './walk.ts';

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

/** Findings of all rules for WCAG 2.2 A and AA, and of the one for a contrast of 7:1. */
async function findings(page: Page, state: string): Promise<string[]> {
  const violations = await page.evaluate(async () => {
    const { axe: rules } = globalThis as unknown as { readonly axe: Axe };
    const { violations: found } = await rules.run(document, {
      runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'],
      rules: { 'color-contrast-enhanced': { enabled: true } },
      resultTypes: ['violations'],
    });
    return found.map(({ id, nodes }) => ({
      id,
      nodes: nodes.map((node) => `${JSON.stringify(node.target)} ${node.failureSummary ?? ''}`),
    }));
  });
  return violations.flatMap(({ id, nodes }) => nodes.slice(0, 3).map((node) => `${state}: ${id}: ${node}`));
}

/** What can be pressed and is smaller than 44 x 44 CSS pixels (WCAG 2.5.5). */
const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const LEAST = 43.5;
    const WHAT =
      'a[href], button, input, select, textarea, summary, [role=tab], [role=option], [role=gridcell]';
    const small: string[] = [];
    const modal = (root: ParentNode): Element | null =>
      [...root.querySelectorAll('*')].reduce<Element | null>(
        (found, each) =>
          found ?? (each.matches('dialog:modal') ? each : each.shadowRoot ? modal(each.shadowRoot) : null),
        null,
      );
    const look = (root: ParentNode): void => {
      for (const each of root.querySelectorAll<HTMLElement>('*')) {
        if (each.shadowRoot) look(each.shadowRoot);
        if (!each.matches(WHAT) || each.matches(':disabled, .editor')) continue;
        if (!each.checkVisibility({ visibilityProperty: true, opacityProperty: true })) continue;
        const label = each.closest('label');
        const { width, height, x, y } = (
          each.matches('input') && label ? label : each
        ).getBoundingClientRect();
        const seen = width > 2 && x < innerWidth && y < innerHeight && x + width > 0 && y + height > 0;
        if (seen && (height < LEAST || width < LEAST))
          small.push(
            `${each.localName}.${each.className} "${(each.getAttribute('aria-label') ?? each.textContent ?? '').trim().slice(0, 30)}" ${Math.round(width)} x ${Math.round(height)}`,
          );
      }
    };
    look(modal(document) ?? document);
    return small;
  });

const SCREENS = [
  { name: 'desk, light', width: 1366, height: 768, theme: 'light', touch: false },
  { name: 'desk, dark', width: 1366, height: 768, theme: 'dark', touch: false },
  { name: 'tablet, light', width: 820, height: 1180, theme: 'light', touch: true },
  { name: 'small screen, dark', width: 390, height: 844, theme: 'dark', touch: true },
] as const;

for (const { name, width, height, theme, touch } of SCREENS)
  test(`${name}: no finding in any state${touch ? ', and every target is 44 pixels wide and high' : ''}`, async () => {
    desk = await openDesk({ width, height, visitor: { hasTouch: touch, reducedMotion: 'reduce' } });
    const { page, context } = desk;
    await context.addInitScript(axe);
    await context.addInitScript((look: string) => localStorage.setItem('theme', look), theme);
    await page.reload();
    const found: string[] = [];
    await walk(desk, touch, async (state) => {
      found.push(...(await findings(page, state)));
      if (touch) found.push(...(await smallTargets(page)).map((each) => `${state}: small: ${each}`));
    });
    expect(found).toEqual([]);
  }, 400_000);
