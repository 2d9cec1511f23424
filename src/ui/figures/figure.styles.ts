/** How the figures look: lines and hatches carry the meaning, colours only help. One text for the page and for files that stand alone. */

/** Variables as on the page; a file that stands alone gets the values for black on white. */
export const FIGURE_RULES = `
.figure text { fill: var(--ink); font-family: var(--face); font-size: 13px; font-weight: 400; paint-order: stroke; stroke: var(--paper); stroke-width: 3.5px; stroke-linejoin: round; }
.figure text.heading { fill: var(--ink-2); font-size: 13px; font-weight: 600; }
.figure text.foot { fill: var(--ink-2); font-size: 12px; }
.figure .symbol { font-style: italic; font-size: 14.5px; }
.figure .index { font-size: 10px; }
.figure path, .figure circle, .figure rect { stroke-linejoin: round; stroke-linecap: butt; }
.figure .squares { fill: none; stroke: var(--ruling); stroke-width: 1; }
.figure .frame { fill: none; stroke: var(--ruling-strong); stroke-width: 1; }
.figure .square { fill: none; stroke: var(--ink-2); stroke-width: 1; }
.figure .outline { stroke: var(--ink); stroke-width: 1.7; }
.figure .thin { stroke: var(--ink); stroke-width: 0.9; }
.figure .none { stroke: none; }
.figure .hidden { stroke: var(--ink); stroke-width: 1.2; stroke-dasharray: 5 3; }
.figure .centre { stroke: var(--ink-2); stroke-width: 0.9; stroke-dasharray: 13 3 2.5 3; }
.figure .path { stroke: var(--accent); stroke-width: 1.7; stroke-dasharray: 9 3; }
.figure .edge { stroke: var(--ink); stroke-width: 2.8; }
.figure .area.tool { fill: var(--wash); }
.figure .area.blank { fill: var(--paper); }
.figure .under.work, .figure .under.removed { fill: var(--paper); }
.figure .under.finished { fill: var(--paper-edge); }
.figure .under.chip { fill: var(--caution-wash); }
.figure .hatch { fill: none; stroke: var(--ink-2); stroke-width: 0.8; }
.figure .hatch.chip { stroke: var(--caution); stroke-width: 1.1; }
.figure .hatch.removed { stroke-width: 1.3; }
.figure .squares :is(path, line) { stroke: var(--ruling); stroke-opacity: 1; }
.figure .frame rect { fill: none; stroke: var(--ruling-strong); }
.figure .axis :is(path, line) { stroke: var(--ink-2); }
.figure .curve, .figure .curve path { fill: none; stroke: var(--ink); stroke-width: 1.8; }
.figure .sign, .figure .sign path { fill: var(--paper); stroke: var(--accent); stroke-width: 1.6; }
.figure .sign.full, .figure .sign.full path { fill: var(--accent); stroke: var(--paper); stroke-width: 1.2; }
.figure .tone1, .figure .tone1 path { stroke: var(--accent); }
.figure .tone2, .figure .tone2 path { stroke: var(--caution); }
.figure .tone3, .figure .tone3 path { stroke: var(--good); }
.figure .tone4, .figure .tone4 path { stroke: var(--ink-2); }
.figure .full.tone2, .figure .full.tone2 path { fill: var(--caution); stroke: var(--paper); }
.figure .full.tone1, .figure .full.tone1 path { fill: var(--accent); stroke: var(--paper); }
.figure .bar, .figure .bar rect { stroke: var(--ink); stroke-width: 1.2; }
.figure .band path { stroke: var(--ink-2); stroke-width: 0.8; }
.figure .level line { stroke: var(--caution); stroke-width: 1.6; stroke-dasharray: 12 4; }
.figure .words text { fill: var(--caution); font-weight: 600; }
.figure .dimension, .figure .witness, .figure .leader { fill: none; stroke: var(--accent); stroke-width: 0.9; }
.figure .witness { stroke-width: 0.7; }
.figure .head, .figure .dot { fill: var(--accent); stroke: none; }
`;

/** Values of the variables for a file that stands alone. */
export const FILE_VARIABLES =
  ".figure { --paper: #fff; --paper-edge: #f2f2f2; --ruling: #e6e6e6; --ruling-strong: #bbb; --ink: #000; --ink-2: #333; --accent: #1a389b; --wash: #eef1fb; --caution: #7a3f00; --caution-wash: #fff1d6; --good: #14532d; --line: #8fa3d4; --face: 'Atkinson Hyperlegible Next', 'Atkinson Hyperlegible', sans-serif; }";
