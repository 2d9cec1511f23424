/**
 * Signs that a browser may not keep what is stored, in words; only what there are signs of is said. A private window can not
 * always be told: Chromium reports the same room in both sorts since version 138 ("Predictable reported storage quota" in its
 * list of features; measured in 156: quota, workers, caches and permissions alike) and only refuses the promise, as it does in
 * a new ordinary window; the private windows of Firefox offer no service worker (MDN, "Navigator: serviceWorker property").
 */

export interface StorageSigns {
  /** Bytes the browser offers. */
  readonly quota: number | undefined;
  /** A browser that otherwise keeps programs offers it here too. */
  readonly hasWorkers: boolean;
  /** As `isUninstalledTablet` says. */
  readonly onTablet: boolean;
  readonly persisted: boolean | undefined;
}

/** Far below what any disk of today offers: private windows of earlier browsers keep things in memory and say how little there is. */
const SMALL = 1_000_000_000;

/** One sentence or two; undefined where nothing speaks for a loss. */
export function riskWords({ quota, hasWorkers, onTablet, persisted }: StorageSigns): string | undefined {
  if (!hasWorkers || (quota !== undefined && quota < SMALL))
    return 'This looks like a private window: it forgets the notebook when it is closed. Save a file copy.';
  if (onTablet)
    return 'This tablet may delete what a page keeps after 7 days without use, until the page is on its home screen (share, then “Add to Home Screen”). Save file copies.';
  if (persisted === false)
    return 'This browser has not promised to keep what is stored: it may clear it when space is short, and a private window, which a page can not always tell from another, forgets it when it is closed. Save file copies.';
  return undefined;
}

/** A tablet or telephone of the kind that clears pages it has not seen for 7 days, and the page is not on its home screen. */
export function isUninstalledTablet(): boolean {
  const { userAgent, maxTouchPoints } = navigator;
  const tablet = /iPad|iPhone/.test(userAgent) || (userAgent.includes('Macintosh') && maxTouchPoints > 1);
  return tablet && !matchMedia('(display-mode: standalone)').matches;
}
