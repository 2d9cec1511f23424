/** Reads the designation of an indexable insert, position by position (ISO 1832; inch form as in ANSI B212.4). */

import type { Parameter } from '../definition/index.ts';
import { failure, type Failure, type Grid, type Scalar } from '../expression/index.ts';
import {
  INSCRIBED_CIRCLES,
  INSERT_CLEARANCES,
  INSERT_SHAPES,
  INSERT_THICKNESSES,
  INSERT_TOLERANCES,
  INSERT_TYPES,
  type InsertShape,
} from './insert-symbols.table.ts';
import { parameter } from './parameter.ts';

/** Lengths in m, angle in rad; a position that gives no value says why. */
export interface Insert {
  readonly shape: InsertShape;
  readonly clearance: number;
  /** Both faces cut; undefined for a special insert. */
  readonly doubleSided: boolean | undefined;
  readonly inscribedCircle: number | Failure;
  readonly thickness: number | Failure;
  readonly cornerRadius: number | Failure;
}

export const INSERT_DESIGNATION: Parameter = parameter('designation', {
  meaning: 'designation of the insert, as in "CNMG 12 04 08" or "CNMG 432"',
});

export const INSERT_REMARKS: readonly string[] = [
  'Symbols of the standard, from memory. The same shape and size serve in any holder made for it.',
];

const MILLIMETRE = 1e-3;
const INCH = 25.4e-3;
const ROUNDING = 0.01;

function wrong(position: number, what: string, given: string, allowed: string): Failure {
  return failure('#VALUE!', `position ${position} (${what}) "${given}": allowed are ${allowed}`);
}

const listed = (symbols: Iterable<string>): string => [...symbols].join(' ');

/** Symbol of the edge length: millimetres without decimals; the larger circle where two share it. */
function circles(shape: InsertShape): ReadonlyMap<string, number> {
  const { edge } = shape;
  if (edge === undefined) return new Map();
  return new Map(
    INSCRIBED_CIRCLES.map((circle) => [
      String(Math.floor(circle * edge + ROUNDING)).padStart(2, '0'),
      circle * MILLIMETRE,
    ]),
  );
}

function circleOf(shape: InsertShape, symbol: string, corner: string): number | Failure {
  if (shape.edge === undefined)
    return failure(
      '#VALUE!',
      `position 5 (size): a ${shape.words} has sides of its own, no inscribed circle`,
    );
  if (shape.words === 'round' && corner === 'M0') return Number(symbol) * MILLIMETRE;
  const known = circles(shape);
  return known.get(symbol) ?? wrong(5, 'size', symbol, listed([...known.keys()].sort()));
}

function cornerOf(shape: InsertShape, symbol: string): number | Failure {
  if (shape.words === 'round') return failure('#VALUE!', 'position 7 (corner): a round insert has no corner');
  return /^\d\d$/.test(symbol)
    ? (Number(symbol) / 10) * MILLIMETRE
    : wrong(
        7,
        'corner',
        symbol,
        '00 to 99, tenths of a millimetre; letters stand for a wiper edge, not a radius',
      );
}

/** The insert, or which position can not be read and what is allowed there. */
export function insertOf(designation: Scalar | Grid | undefined): Insert | Failure {
  if (typeof designation !== 'string') return failure('#VALUE!', 'value missing: designation');
  const text = designation.toUpperCase().replaceAll(/\s+/g, '');
  const [first = '', second = '', third = '', fourth = ''] = text;
  const shape = INSERT_SHAPES.get(first);
  if (!shape) return wrong(1, 'shape', first, listed(INSERT_SHAPES.keys()));
  const clearance = INSERT_CLEARANCES.get(second);
  if (clearance === undefined) return wrong(2, 'clearance', second, listed(INSERT_CLEARANCES.keys()));
  if (third === '' || !INSERT_TOLERANCES.includes(third))
    return wrong(3, 'tolerance', third, listed(INSERT_TOLERANCES));
  if (!INSERT_TYPES.has(fourth)) return wrong(4, 'type', fourth, listed(INSERT_TYPES.keys()));
  const size = text.slice(4);
  const head = {
    shape,
    clearance: (clearance * Math.PI) / 180,
    doubleSided: clearance > 0 ? false : INSERT_TYPES.get(fourth),
  };
  const metric = /^(\d\d)(\d\d|T\d)(\d\d|M0|[A-Z]{2})(?!\d)/.exec(size);
  if (metric) {
    const [, length = '', thick = '', corner = ''] = metric;
    const thickness = INSERT_THICKNESSES.get(thick);
    return {
      ...head,
      inscribedCircle: circleOf(shape, length, corner),
      thickness:
        thickness === undefined
          ? wrong(6, 'thickness', thick, listed(INSERT_THICKNESSES.keys()))
          : thickness * MILLIMETRE,
      cornerRadius: cornerOf(shape, corner),
    };
  }
  const inch = /^(\d(?:\.\d)?)(\d(?:\.\d)?)(\d(?:\.\d)?)?(?![\d.])/.exec(size);
  if (!inch)
    return failure(
      '#VALUE!',
      `positions 5 to 7 (size, thickness, corner) "${size}": as in 12 04 08, or in the inch form 432`,
    );
  const [, eighths = '', sixteenths = '', sixtyFourths] = inch;
  return {
    ...head,
    inscribedCircle: shape.edge === undefined ? circleOf(shape, eighths, '') : (Number(eighths) / 8) * INCH,
    thickness: (Number(sixteenths) / 16) * INCH,
    cornerRadius:
      shape.words === 'round' || sixtyFourths === undefined
        ? shape.words === 'round'
          ? cornerOf(shape, '')
          : wrong(7, 'corner', '', 'a number of 1/64 in')
        : (Number(sixtyFourths) / 64) * INCH,
  };
}
