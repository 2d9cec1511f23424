/** The families of the domain library, in the order of the function list. */

export interface Family {
  readonly name: string;
  readonly title: string;
}

export const FAMILIES: readonly Family[] = [
  { name: 'CUT', title: 'Common to all cutting' },
  { name: 'MILL', title: 'Milling' },
  { name: 'TURN', title: 'Turning' },
  { name: 'DRILL', title: 'Drilling' },
  { name: 'HOLE', title: 'Hole tolerances and capability' },
  { name: 'THREAD', title: 'Threads' },
  { name: 'CRANK', title: 'Crankshafts with large insert cutters' },
  { name: 'FORCE', title: 'Specific cutting force' },
  { name: 'MATERIAL', title: 'Work and tool materials' },
  { name: 'RIGID', title: 'Stiffness, deflection, natural frequency' },
  { name: 'CHATTER', title: 'Chatter' },
  { name: 'LIFE', title: 'Wear and tool life' },
  { name: 'COST', title: 'Cost of a part' },
  { name: 'STOCK', title: 'Heavy roughing and trials' },
  { name: 'LINE', title: 'Operations in a line' },
  { name: 'MACHINE', title: 'Machine limits' },
  { name: 'HARDNESS', title: 'Hardness scales' },
  { name: 'INSERT', title: 'Insert designations' },
  { name: 'TRIAL', title: 'Planning and reading trials' },
];
