/** What a finger needs on a small screen, in every state of the program. */

import { fingers, lookOver, width } from './look-over.ts';

lookOver(
  ['small screen: every target is 44 pixels wide and high, and nothing is wider than the window', 390, 844],
  fingers,
  width,
);
