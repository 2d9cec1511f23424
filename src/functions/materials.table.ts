/**
 * Work and tool materials. Specific forces: turning with carbide at about 100 m/min, sharp edge; milling takes 1.2 to 1.4
 * times, drilling about 1.2 times as much (T1, from memory). kc = kc1.1 (h / 1 mm)^-mc.
 * Table of origin for confidence A and B: main values of Kienzle and Victor, and of Koenig and Essel, as in T1 and K2 (from memory).
 */

/** A, B, C as in `CONFIDENCE`. */
export type Confidence = 'A' | 'B' | 'C';

export const CONFIDENCE: Readonly<Record<Confidence, string>> = {
  A: 'from memory; agrees within 3.2 % over h = 0.11 to 1.13 mm with a second published table',
  B: 'from memory; printed alike in several textbooks',
  C: 'from memory; sources differ by 20 % and more: a starting value only, measure with FORCE.SPECIFIC_MEASURED',
};

export interface Material {
  /** Designation first, then other names. */
  readonly names: readonly string[];
  /** Group of ISO 513; absent for tool materials. */
  readonly group?: 'P' | 'M' | 'K' | 'N' | 'S' | 'H';
  /** MPa, at a chip of 1 mm by 1 mm. */
  readonly kc11?: number;
  readonly mc?: number;
  /** deg; reference rake of the force values (K2, T1, from memory). */
  readonly referenceRake?: number;
  /** Of the force values. */
  readonly confidence?: Confidence;
  /** kg/m3 */
  readonly density: number;
  readonly densityProvenance: string;
  readonly note?: string;
}

const MEMORY = 'density from memory; printed alike in several textbooks';

function work(
  names: readonly string[],
  group: NonNullable<Material['group']>,
  kc11: number,
  mc: number,
  density: number,
  confidence: Confidence,
  note?: string,
): Material {
  return {
    names,
    group,
    kc11,
    mc,
    referenceRake: group === 'K' ? 2 : 6,
    confidence,
    density,
    densityProvenance: MEMORY,
    ...(note === undefined ? {} : { note }),
  };
}

const tool = (names: readonly string[], density: number, densityProvenance: string): Material => ({
  names,
  density,
  densityProvenance,
});

export const MATERIALS: readonly Material[] = [
  work(['S275JR', 'St 42', 'St 44'], 'P', 1780, 0.17, 7850, 'A'),
  work(['E295', 'St 50-2'], 'P', 1990, 0.26, 7850, 'A'),
  work(['E335', 'St 60-2'], 'P', 2110, 0.17, 7850, 'A'),
  work(['E360', 'St 70-2'], 'P', 2260, 0.3, 7850, 'A'),
  work(['C45E'], 'P', 2220, 0.14, 7850, 'B', 'newer tables give 1500 to 1700 MPa with 0.25'),
  work(['C60E'], 'P', 2130, 0.18, 7850, 'B'),
  work(['16MnCr5'], 'P', 2100, 0.26, 7850, 'A'),
  work(['18CrNi8'], 'P', 2260, 0.3, 7850, 'A'),
  work(['34CrMo4'], 'P', 2240, 0.21, 7850, 'B'),
  work(['42CrMo4'], 'P', 2500, 0.26, 7850, 'A'),
  work(['51CrV4', '50CrV4'], 'P', 2220, 0.26, 7850, 'B'),
  work(['56NiCrMoV7 annealed'], 'P', 1740, 0.24, 7850, 'B'),
  work(['56NiCrMoV7 quenched and tempered'], 'P', 1920, 0.24, 7850, 'B'),
  work(['GE240', 'GS-45'], 'P', 1600, 0.17, 7850, 'A'),
  work(['GE260', 'GS-52'], 'P', 1800, 0.16, 7850, 'A'),
  work(['X20Cr13'], 'M', 1820, 0.26, 7700, 'C'),
  work(['X5CrNi18-10'], 'M', 1900, 0.21, 7900, 'C'),
  work(['X2CrNi18-9'], 'M', 1900, 0.21, 7900, 'C'),
  work(['X2CrNiMoN22-5-3', 'duplex'], 'M', 2300, 0.21, 7800, 'C'),
  work(['X120Mn12', 'manganese hard steel'], 'M', 3300, 0.22, 7900, 'A'),
  work(['EN-GJL-150'], 'K', 950, 0.21, 7100, 'A', 'a second table gives 922 MPa with 0.220'),
  work(['EN-GJL-250'], 'K', 1160, 0.26, 7200, 'A'),
  work(['EN-GJS-400-15'], 'K', 1005, 0.25, 7100, 'C'),
  work(['EN-GJS-600-3'], 'K', 1480, 0.17, 7150, 'C'),
  work(['chilled cast iron'], 'K', 2060, 0.19, 7400, 'B'),
  work(['EN AW-6082'], 'N', 750, 0.23, 2700, 'C'),
  work(['EN AW-7075'], 'N', 750, 0.23, 2810, 'C'),
  work(['EN AC-AlSi9Cu3'], 'N', 830, 0.23, 2700, 'C'),
  work(['AlSi12'], 'N', 830, 0.23, 2700, 'C'),
  work(['magnesium alloys'], 'N', 280, 0.19, 1800, 'B'),
  work(['CuZn39Pb3', 'brass'], 'N', 780, 0.18, 8470, 'B'),
  work(['gunmetal', 'bronze'], 'N', 640, 0.25, 8800, 'B'),
  work(
    ['Ti-6Al-4V'],
    'S',
    1400,
    0.23,
    4430,
    'C',
    'measured Kienzle values exist (K3), which were not read: replace with them',
  ),
  work(['NiCr19Fe19Nb5Mo3 aged', 'alloy 718'], 'S', 2600, 0.25, 8200, 'C'),
  work(['hardened steel 55 HRC'], 'H', 3500, 0.25, 7850, 'C'),
  tool(['steel'], 7850, ''),
  tool(['cemented carbide', 'carbide', 'carbide 10 % Co'], 14500, MEMORY),
  tool(['carbide 6 % Co'], 14900, MEMORY),
  tool(['grey iron', 'gray iron'], 7200, MEMORY),
  tool(['ductile iron'], 7100, MEMORY),
  tool(['aluminium', 'aluminum'], 2700, MEMORY),
  tool(
    ['tungsten heavy alloy', 'tungsten heavy alloy class 1'],
    17000,
    'ASTM B777-15, Table 1: class 1 is 16 850 to 17 300 kg/m3',
  ),
  tool(
    ['tungsten heavy alloy class 2'],
    17500,
    'ASTM B777-15, Table 1: class 2 is 17 150 to 17 850 kg/m3, the middle is taken',
  ),
  tool(
    ['tungsten heavy alloy class 3'],
    18000,
    'ASTM B777-15, Table 1: class 3 is 17 750 to 18 350 kg/m3, the middle is taken',
  ),
  tool(
    ['tungsten heavy alloy class 4'],
    18550,
    'ASTM B777-15, Table 1: class 4 is 18 250 to 18 850 kg/m3, the middle is taken',
  ),
];
