/** Finds a material by what was typed, or tells what is near. */

import { failure, type Failure, type Scalar } from '../expression/index.ts';
import { MATERIALS, type Material } from './materials.table.ts';

/** Case, spaces, hyphens and dots do not tell materials apart. */
const plain = (text: string): string => text.toLowerCase().replaceAll(/[^a-z0-9%]/g, '');

const byName = new Map(
  MATERIALS.flatMap((material) => material.names.map((name) => [plain(name), material] as const)),
);

function pairs(text: string): Set<string> {
  const found = new Set<string>();
  for (let i = 0; i + 1 < text.length; i += 1) found.add(text.slice(i, i + 2));
  return found;
}

/** Share of letter pairs that two texts have in common. */
function likeness(a: string, b: string): number {
  const [p, q] = [pairs(a), pairs(b)];
  const common = [...p].filter((pair) => q.has(pair)).length;
  return (2 * common) / Math.max(1, p.size + q.size);
}

const NEAR = 3;

/** The material, or #N/A with the nearest designations. */
export function materialNamed(designation: Scalar | object | undefined): Material | Failure {
  if (typeof designation !== 'string') return failure('#VALUE!', 'value missing: designation');
  const wanted = plain(designation);
  const material = byName.get(wanted);
  if (material) return material;
  const near = MATERIALS.flatMap(({ names }) => names)
    .map((name) => ({ name, like: likeness(wanted, plain(name)) }))
    .sort((a, b) => b.like - a.like)
    .slice(0, NEAR)
    .map(({ name }) => `"${name}"`);
  return failure('#N/A', `no material "${designation}" in the table; near ones: ${near.join(', ')}`);
}
