/** What a screen reader, a keyboard and a weak eye need at the desk, in every state of the program. */

import { lookOver, rules, stillness } from './look-over.ts';

lookOver(['desk: no finding, light or dark, and nothing moves', 1366, 768], rules, stillness);
