/** The bibliography: what a function rests on, and whether the place was read or is written down from memory. */

export interface Source {
  /** Author, title, edition, place. */
  readonly text: string;
  /** "seen": read in a copy; "partly seen": some of it; "memory": not read again; "derived": worked out here, the text says from what. */
  readonly provenance: 'seen' | 'partly seen' | 'memory' | 'derived';
}

/** Keys are those that the definitions name in `sources`. */
export const SOURCES: ReadonlyMap<string, Source> = new Map<string, Source>([
  [
    'A1',
    {
      text: 'Y. Altintas, Manufacturing Automation, 2nd ed., Cambridge University Press 2012, ch. 2 (milling geometry and forces), ch. 4 (chatter)',
      provenance: 'memory',
    },
  ],
  [
    'A2',
    {
      text: 'Y. Altintas, E. Budak, Analytical prediction of stability lobes in milling, CIRP Annals 44 (1995) 357-362',
      provenance: 'memory',
    },
  ],
  [
    'B1',
    {
      text: 'A. F. Bissell, How reliable is your capability index?, Applied Statistics 39 (1990) 331-340',
      provenance: 'memory',
    },
  ],
  [
    'G1',
    {
      text: 'M. P. Groover, Fundamentals of Modern Manufacturing, 4th ed. 2010, ch. 22, with its published solutions',
      provenance: 'seen',
    },
  ],
  [
    'G2',
    {
      text: 'M. P. Groover, Fundamentals of Modern Manufacturing, 4th ed. 2010, ch. 24 (machining economics), with its published solutions; W. W. Gilbert, Economics of machining, in Machining: Theory and Practice, ASM 1950 (memory)',
      provenance: 'partly seen',
    },
  ],
  ['I1', { text: 'ISO 286-1:2010, tables 1 and 2 (read in stored copies)', provenance: 'seen' }],
  [
    'I2',
    {
      text: 'ISO 18265:2013, Annex A; ASTM E140 (read in a copy of the same table under DIN 50150)',
      provenance: 'partly seen',
    },
  ],
  [
    'K1',
    {
      text: 'O. Kienzle, Die Bestimmung von Kräften und Leistungen an spanenden Werkzeugen und Werkzeugmaschinen, VDI-Z 94 (1952) 299-305',
      provenance: 'memory',
    },
  ],
  [
    'K2',
    {
      text: 'F. Klocke, Manufacturing Processes 1: Cutting, Springer 2011; W. König, K. Essel, Spezifische Schnittkraftwerte, Stahleisen 1973',
      provenance: 'memory',
    },
  ],
  [
    'K3',
    {
      text: 'H. Klippel, S. Süssmaier, N. Zhang, M. Kuffa, K. Wegener, Large-scale investigation of dry orthogonal cutting experiments Ti6Al4V and Ck45, Int. J. Adv. Manuf. Technol. 135 (2024) 2871-2908 (abstract read, values not)',
      provenance: 'partly seen',
    },
  ],
  [
    'KV',
    {
      text: 'L. Kops, D. T. Vo, Determination of the equivalent diameter of an end mill based on its compliance, CIRP Annals 39 (1990) 93-96; E. B. Kivanc, E. Budak, Int. J. Mach. Tools Manuf. 44 (2004) 1151',
      provenance: 'memory',
    },
  ],
  [
    'M1',
    {
      text: 'M. E. Martellotti, An analysis of the milling process, Trans. ASME 63 (1941) 677-700',
      provenance: 'memory',
    },
  ],
  [
    'R1',
    {
      text: 'S. Timoshenko, Strength of Materials I (any edition; any other text on strength of materials)',
      provenance: 'memory',
    },
  ],
  [
    'R2',
    {
      text: 'S. S. Rao, Mechanical Vibrations; R. D. Blevins, Formulas for Natural Frequency and Mode Shape',
      provenance: 'memory',
    },
  ],
  [
    'S1',
    {
      text: "M. C. Shaw, C. J. Oxford, On the drilling of metals II, Trans. ASME 79 (1957) 139-148 (memory); Machinery's Handbook, 31st ed. 2020, pp. 1152-1153 (read)",
      provenance: 'partly seen',
    },
  ],
  [
    'T1',
    { text: 'H. Tschätsch, Praxis der Zerspantechnik; E. Paucksch, Zerspantechnik', provenance: 'memory' },
  ],
  [
    'T2',
    { text: 'J. Tlusty, M. Polacek 1963; S. A. Tobias, Machine Tool Vibration, 1965', provenance: 'memory' },
  ],
  [
    'T3',
    {
      text: 'F. W. Taylor, On the art of cutting metals, Trans. ASME 28 (1907); ISO 3685:1993; K. Tatar, S. Sjöberg, N. Andersson, Heliyon 6 (2020) e04217 (abstract read)',
      provenance: 'partly seen',
    },
  ],
  [
    'W1',
    {
      text: 'B. L. Welch, Biometrika 34 (1947) 28-35; J. Cohen, Statistical Power Analysis',
      provenance: 'memory',
    },
  ],
  [
    'W2',
    {
      text: 'W. Q. Meeker, L. A. Escobar, Statistical Methods for Reliability Data, 1998',
      provenance: 'memory',
    },
  ],
  [
    'SD',
    {
      text: 'T. Insperger, G. Stépán, Int. J. Numer. Meth. Engng 55 (2002) 503-518 and 61 (2004) 117-141',
      provenance: 'memory',
    },
  ],
  ['ISO 513', { text: 'ISO 513:2012, groups P M K N S H of work materials', provenance: 'memory' }],
  [
    'ISO 3002',
    {
      text: 'ISO 3002-1:1982, geometry of the active part of cutting tools: tool cutting edge angle',
      provenance: 'memory',
    },
  ],
  ['B777', { text: 'ASTM B777-15, Table 1: density of tungsten heavy alloys', provenance: 'seen' }],
  ['geometry', { text: 'Plane geometry, worked out in the text of the function', provenance: 'derived' }],
  [
    'mechanics',
    {
      text: 'Mechanics of the textbook: power, torque, heat balance, circular motion',
      provenance: 'derived',
    },
  ],
  [
    'derived',
    {
      text: 'Worked out for this program from the definitions; the examples say how it was checked',
      provenance: 'derived',
    },
  ],
  [
    'ISO 21920',
    { text: 'ISO 21920-2:2021 (before it ISO 4287:1997), definitions of Ra and Rt', provenance: 'memory' },
  ],
  [
    'ISO 261',
    {
      text: 'ISO 261:1998, coarse and fine pitches of metric threads (up to M64 read in a copy of DIN 13)',
      provenance: 'partly seen',
    },
  ],
  [
    'ISO 724',
    {
      text: 'ISO 724:1993, basic dimensions of metric threads; the formulas read in a public encyclopedia page',
      provenance: 'partly seen',
    },
  ],
  [
    'B1.1',
    {
      text: 'ASME B1.1, unified inch screw threads; pitch and root diameters read in a public table',
      provenance: 'partly seen',
    },
  ],
  ['ISO 898-1', { text: 'ISO 898-1 (stress area, root diameter d3) and DIN 13-1', provenance: 'memory' }],
  [
    'ISO 965-1',
    {
      text: 'ISO 965-1:2013, tolerances TD1 of internal threads (as the limits 6H of ISO 965-2, read in a stored copy)',
      provenance: 'partly seen',
    },
  ],
  ['ISO 6983', { text: 'ISO 6983-1:2009, program format and preparatory functions', provenance: 'memory' }],
  ['ISO 22514', { text: 'ISO 22514-2:2017, capability of processes', provenance: 'memory' }],
  [
    'tap hole',
    {
      text: 'Drill size D - 0.01299 percent/n for cut threads, read in a public page; the full height is 3 sqrt(3)/8 P a side',
      provenance: 'seen',
    },
  ],
  [
    'form hole',
    { text: 'Drill size D - 0.0068 percent/n for formed threads, a rule of the trade', provenance: 'memory' },
  ],
  [
    'statistics',
    {
      text: 'Statistics of the textbook: least squares, t and normal distribution, geometric mean',
      provenance: 'derived',
    },
  ],
  [
    'ISO 3685',
    {
      text: 'ISO 3685:1993, tool-life testing with single-point turning tools; ISO 8688-1 and 8688-2:1989, in face and end milling (wear limits)',
      provenance: 'memory',
    },
  ],
  [
    'shuffle',
    {
      text: 'R. A. Fisher, F. Yates, Statistical Tables, 1938 (shuffle); W. H. Press et al., Numerical Recipes, ch. 7 (generator)',
      provenance: 'memory',
    },
  ],
  [
    'ISO 1832',
    {
      text: 'ISO 1832:2017, indexable inserts for cutting tools: designation; inch form as in ANSI B212.4',
      provenance: 'memory',
    },
  ],
  ['practice', { text: 'Common practice, no source', provenance: 'memory' }],
]);
