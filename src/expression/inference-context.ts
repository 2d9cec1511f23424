/** What inference asks of the notebook around a formula, and what it answers. */

import type { Caution, FunctionTable, UnitSystem } from './function-table.ts';
import type { CellNode, NameNode, Node, RangeNode, Span } from './tree.ts';
import type { GridType, ScalarType, ValueType } from './type.ts';
import type { Failure } from './value.ts';

/** The surroundings of a formula. Answers may be failed types: their failure is passed on as it is, root included. */
export interface InferenceContext {
  /**
   * Type of a cell. `literal` is set where the cell holds a typed plain number: it is asked for only where the cell
   * is an exponent or a function's argument, and such cells are reported in `Inference.constants` (F12).
   */
  cellType(worksheet: string | undefined, column: number, row: number): ScalarType;
  /** Type of a range, its corners as written. */
  rangeType(node: RangeNode): GridType | ScalarType;
  /** Type of what a name stands for; undefined if there is no such name. */
  nameType(worksheet: string | undefined, name: string): ValueType | undefined;
  /** Whether a word that the formula does not use as a name would be one; where left out, `nameType` tells. */
  hasName?(name: string): boolean;
  /** Names that exist and look like this one, nearest first. */
  namesNear?(worksheet: string | undefined, name: string): readonly string[];
  /** Display unit of a cell or a name, for messages ("B3 in mm"); undefined takes the kind's default. */
  unitOf?(node: CellNode | NameNode): string | undefined;
  readonly functions: FunctionTable;
  /** Unit system in which plain numbers are read (F15). */
  readonly reading: UnitSystem;
  /** Currency code of the notebook. */
  readonly currency: string;
}

/** A plain number that is read in a unit (F15): the note, and where the unit belongs. */
export interface AssumedNote {
  /** "0.1 read as 0.1 mm" */
  readonly text: string;
  readonly unit: string;
  /** The argument that is read so. */
  readonly span: Span;
}

/** What is known of a formula before it is computed. */
export interface Inference {
  /** A grid only where the formula gives several values on purpose (F26). */
  readonly type: ValueType;
  /** The tree to evaluate: plain numbers carry the units they are read in, dates their factor, missing values their error. */
  readonly tree: Node;
  readonly cautions: readonly Caution[];
  readonly assumed: readonly AssumedNote[];
  /** Cells whose number itself decided something: a change of the number asks for a new inference. */
  readonly constants: readonly (CellNode | NameNode)[];
  /** Set if and only if type is failed. */
  readonly failure?: Failure;
}
