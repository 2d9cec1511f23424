/** What a screen reader and a finger need on a small screen, in every state of the program. */

import { fingers, lookOver, rulesInTheLight, wholes, width } from './look-over.ts';

lookOver(
  [
    'small screen: no finding, every target is 44 pixels wide and high, what is chosen is read whole, and nothing is wider than the window',
    390,
    844,
  ],
  rulesInTheLight,
  fingers,
  wholes,
  width,
);
