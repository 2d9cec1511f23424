/** A finger on the screen of a browser that was started by itself: touches as the device sends them, no mouse anywhere. */

import type { CDPSession, Locator, Page } from 'playwright-core';

export class Finger {
  readonly #page: Page;
  readonly #session: CDPSession;

  private constructor(page: Page, session: CDPSession) {
    this.#page = page;
    this.#session = session;
  }

  /** Makes the page one that is touched, in portrait; to be called before it is loaded. */
  static async of(page: Page, size = { width: 820, height: 1180 }): Promise<Finger> {
    const session = await page.context().newCDPSession(page);
    await session.send('Emulation.setTouchEmulationEnabled', { enabled: true, maxTouchPoints: 5 });
    await session.send('Emulation.setDeviceMetricsOverride', {
      ...size,
      deviceScaleFactor: 1,
      mobile: false,
      screenOrientation: { type: 'portraitPrimary', angle: 0 },
    });
    return new Finger(page, session);
  }

  /** Puts the finger down on the middle of an element and takes it away again. */
  async tap(target: Locator): Promise<void> {
    await target.scrollIntoViewIfNeeded();
    const box = await target.boundingBox();
    if (!box) throw new Error('there is nothing to be touched');
    const point = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
    await this.#session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [point] });
    await this.#session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  }

  /** Touches keys of the keypad in sight, by their names. */
  async press(...names: string[]): Promise<void> {
    for (const name of names)
      await this.tap(
        this.#page.locator('pass-form on-screen-keypad').getByRole('button', { name, exact: true }),
      );
  }
}
