/** What is measured of a page as it stands: targets for a finger, movement, width. */

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

/** What would move, although the visitor asked for stillness. */
export const movingThings = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const found = new Set<string>();
    const look = (root: ParentNode): void => {
      for (const each of root.querySelectorAll('*')) {
        if (each.shadowRoot) look(each.shadowRoot);
        if (each.matches('td, tr')) continue;
        const { transitionDuration, animationName, scrollBehavior } = getComputedStyle(each);
        const still = /^(?:0s(?:, )?)+$/.test(transitionDuration) && animationName === 'none';
        if (!still || scrollBehavior === 'smooth') found.add(`${each.localName}.${each.className}`);
      }
    };
    look(document);
    return [...found];
  });

/** Pixels by which the page is wider than its window: what has to be scrolled sideways scrolls within itself. */
export const tooWide = (page: Page): Promise<number> =>
  page.evaluate(() => Math.max(0, (document.scrollingElement?.scrollWidth ?? 0) - innerWidth));

/** Lists of which what is chosen can not be read whole: it needs more lines than there is room for. */
export const cutSelects = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const ARROW = 18;
    const cut: string[] = [];
    const look = (root: ParentNode): void => {
      for (const each of root.querySelectorAll<HTMLElement>('*')) {
        if (each.shadowRoot) look(each.shadowRoot);
        if (!(each instanceof HTMLSelectElement) || !each.checkVisibility({ visibilityProperty: true }))
          continue;
        const chosen = each.selectedOptions[0]?.textContent?.trim() ?? '';
        const { font, letterSpacing, paddingLeft, paddingRight, whiteSpaceCollapse, textWrapMode } =
          getComputedStyle(each);
        const wraps = textWrapMode === 'wrap' && whiteSpaceCollapse === 'collapse';
        const text = document.createElement('div');
        text.textContent = chosen;
        const room = each.clientWidth - parseFloat(paddingLeft) - parseFloat(paddingRight) - ARROW;
        Object.assign(text.style, {
          position: 'absolute',
          visibility: 'hidden',
          font,
          letterSpacing,
          lineHeight: 'normal',
          inlineSize: wraps ? `${room}px` : 'auto',
          overflowWrap: 'anywhere',
          whiteSpace: wraps ? 'normal' : 'pre',
        });
        document.body.append(text);
        const { width, height } = text.getBoundingClientRect();
        text.remove();
        if (wraps ? height > each.clientHeight : width > room + 1)
          cut.push(
            `${each.ariaLabel ?? each.closest('label')?.textContent?.trim().slice(0, 20) ?? ''}: ${chosen}`,
          );
      }
    };
    look(document);
    return cut;
  });
