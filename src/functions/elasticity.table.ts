/** Moduli of elasticity of tool and work materials. */

export interface Elasticity {
  /** Name first, then other names. */
  readonly names: readonly string[];
  /** GPa */
  readonly modulus: number;
  /** What the user must know of the row; empty where there is nothing. */
  readonly provenance: string;
}

const MEMORY = 'modulus from memory; printed alike in several textbooks';

export const ELASTICITIES: readonly Elasticity[] = [
  { names: ['steel'], modulus: 210, provenance: '' },
  {
    names: ['cemented carbide', 'carbide', 'carbide 10 % Co'],
    modulus: 580,
    provenance: 'modulus from memory; sources give 500 to 650 GPa, less for more cobalt',
  },
  { names: ['carbide 6 % Co'], modulus: 630, provenance: MEMORY },
  { names: ['carbide 15 % Co'], modulus: 530, provenance: MEMORY },
  {
    names: ['tungsten heavy alloy'],
    modulus: 330,
    provenance: 'modulus from memory; sources give 270 to 400 GPa',
  },
  { names: ['grey iron', 'gray iron', 'EN-GJL-250'], modulus: 110, provenance: MEMORY },
  { names: ['ductile iron', 'EN-GJS-600-3'], modulus: 170, provenance: MEMORY },
  { names: ['Ti-6Al-4V', 'titanium'], modulus: 114, provenance: MEMORY },
  { names: ['aluminium', 'aluminum', 'EN AW-6082', 'EN AW-7075'], modulus: 70, provenance: MEMORY },
  { names: ['alloy 718', 'NiCr19Fe19Nb5Mo3 aged'], modulus: 205, provenance: MEMORY },
];
