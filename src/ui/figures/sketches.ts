/** All kinds of sketches. A new one: its file in sketches/, its row here, and the functions it illustrates in function-sketches.table.ts. */

import type { Sketch } from './sketch.ts';
import { BALL_DEPTH } from './sketches/ball-depth.ts';
import { BALL_SCALLOP } from './sketches/ball-scallop.ts';
import { CHAIN_SLOT } from './sketches/chain-slot.ts';
import { CIRCLE_INSIDE, CIRCLE_OUTSIDE } from './sketches/circle-path.ts';
import { PIN_EXTERNAL, PIN_INTERNAL } from './sketches/crank-pin.ts';
import { CROSSING_HOLE } from './sketches/crossing-hole.ts';
import { ENGAGEMENT_DOWN, ENGAGEMENT_UP } from './sketches/cutter-engagement.ts';
import { DEEP_HOLE } from './sketches/deep-hole.ts';
import { DRILL_ENTRY } from './sketches/drill-entry.ts';
import { HELIX_PITCH } from './sketches/helix-pitch.ts';
import { OVERHUNG_TOOL } from './sketches/overhung-tool.ts';
import { RAMP } from './sketches/ramp.ts';
import { ROUND_INSERT } from './sketches/round-insert.ts';
import { STOCK_PART } from './sketches/stock-part.ts';
import { THREAD_MILLING } from './sketches/thread-milling.ts';
import { THREAD_SECTION } from './sketches/thread-section.ts';
import { TURNED_SURFACE } from './sketches/turned-surface.ts';
import { TURNING_CHIP } from './sketches/turning-chip.ts';

export const SKETCHES: readonly Sketch[] = [
  ENGAGEMENT_DOWN,
  ENGAGEMENT_UP,
  CIRCLE_INSIDE,
  CIRCLE_OUTSIDE,
  RAMP,
  HELIX_PITCH,
  ROUND_INSERT,
  BALL_DEPTH,
  BALL_SCALLOP,
  DEEP_HOLE,
  CHAIN_SLOT,
  DRILL_ENTRY,
  CROSSING_HOLE,
  TURNING_CHIP,
  TURNED_SURFACE,
  THREAD_SECTION,
  THREAD_MILLING,
  PIN_EXTERNAL,
  PIN_INTERNAL,
  OVERHUNG_TOOL,
  STOCK_PART,
];

export const sketchOf = (key: string): Sketch | undefined => SKETCHES.find((each) => each.key === key);
