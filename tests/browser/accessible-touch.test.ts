/** What a screen reader, a finger and a weak eye need on a tablet, in every state of the program. */

import { fingers, lookOver, rules, width } from './look-over.ts';

lookOver(
  ['tablet: no finding, light or dark, and every target is 44 pixels wide and high', 820, 1180],
  rules,
  fingers,
  width,
);
