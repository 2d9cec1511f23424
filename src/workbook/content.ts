/** What stands in a cell, taken into the engine: a value with its type, or a formula. */

import { readContent } from '../document/index.ts';
import { failure } from '../expression/index.ts';
import type { Scalar, ScalarType } from '../expression/index.ts';

/** A given value with its static type; `unit` as typed. */
export interface Given {
  readonly value: Scalar;
  readonly type: ScalarType;
  readonly unit?: string;
}

const BLANK: Given = { value: null, type: { type: 'blank' } };

/** The formula text, or the value that the content stands for. */
export function readGiven(content: string, currency: string): Given | { readonly formula: string } {
  const read = readContent(content, currency);
  switch (read.type) {
    case 'formula':
      return { formula: read.text };
    case 'quantity':
      return { value: read.si, type: { type: 'number', kind: read.kind }, unit: read.unit.symbol };
    case 'number':
      return { value: read.si, type: { type: 'number', kind: read.kind, literal: read.si } };
    case 'date':
      return { value: read.si, type: { type: 'number', kind: read.kind } };
    case 'logical':
      return { value: read.value, type: { type: 'logical' } };
    case 'text':
      return { value: read.text, type: { type: 'text' } };
    case 'unknownUnit': {
      const near = read.near.length > 0 ? `; did you mean ${read.near.join(' or ')}?` : '';
      const unknown = failure('#UNIT!', `unknown unit ${read.unknown}${near}`);
      return { value: unknown, type: { type: 'failed', failure: unknown } };
    }
    case 'empty':
      return BLANK;
  }
}
