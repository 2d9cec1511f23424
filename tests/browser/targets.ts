/** What a finger meets on a page as it stands: targets that are too small, and words that are cut off. */

import type { Page } from 'playwright-core';

/** What can be pressed and is smaller than 44 x 44 CSS pixels (WCAG 2.5.5). */
export const smallTargets = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const LEAST = 43.5;
    const WHAT =
      'a[href], button, input, select, textarea, summary, [role=tab], [role=option], [role=gridcell]';
    const small: string[] = [];
    const modal = (root: ParentNode): Element | null => {
      let found: Element | null = null;
      for (const each of root.querySelectorAll('*')) {
        if (each.matches('dialog:modal')) found = each;
        found = (each.shadowRoot && modal(each.shadowRoot)) ?? found;
      }
      return found;
    };
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
