/** The cautions that are always in sight (common practice of the trade, no single source). */

export const USUAL_CAUTIONS: readonly string[] = [
  'Rotating tools and chips injure: guards closed, eyes protected.',
  'Never exceed the speed marked on the tool, the holder or the machine.',
  'Large cutters and long overhangs: observe the speed limit of the body.',
  'Titanium and magnesium chips burn: have the right extinguisher at hand.',
  'New programs are proved out above the part at reduced feed.',
  'Values are starting values: local rules, the documents of machine and tool and a qualified person decide.',
];

/** One line for the foot of the page. */
export const CAUTION_LINE =
  'Starting values: local rules, the documents of machine and tool and a qualified person decide. Guards closed, eyes protected, never above the speed marked on tool, holder or machine.';
