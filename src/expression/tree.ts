/** The syntax tree of a formula: plain data, every node with the half-open span of characters it was read from. */

/** Half-open span [from, to) in UTF-16 units of the formula text, the leading = included. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

export type ErrorCode =
  | '#DIV/0!'
  | '#N/A'
  | '#NAME?'
  | '#NUM!'
  | '#REF!'
  | '#VALUE!'
  | '#UNIT!'
  | '#CIRCLE!'
  | '#OCCUPIED!'
  | '#LIMIT!';

export type BinaryOperator = '^' | '*' | '/' | '+' | '-' | '&' | '=' | '<>' | '<' | '<=' | '>' | '>=';
export type UnaryOperator = '-' | '+';

/** A number as typed; `digits` is canonical text (decimal point, no grouping), `value` its nearest double. */
export interface NumberNode extends Span {
  readonly type: 'number';
  readonly digits: string;
  readonly value: number;
}
/** A number or an inline array followed by a unit (F7, F25); binds tighter than any operator. `percent` numbers may carry none. */
export interface QuantityNode extends Span {
  readonly type: 'quantity';
  readonly magnitude: NumberNode | ArrayNode | PercentNode;
  readonly unit: string;
  readonly unitSpan: Span;
}
export interface TextNode extends Span {
  readonly type: 'text';
  readonly value: string;
}
export interface LogicalNode extends Span {
  readonly type: 'logical';
  readonly value: boolean;
}
/** An error written as a constant, such as #N/A. */
export interface ErrorNode extends Span {
  readonly type: 'error';
  readonly code: ErrorCode;
  /** Plain words, where inference put the node in the place of an empty cell ("value missing: B4"). */
  readonly message?: string;
  /** As written, where that is no error name of ours (#NULL!): it counts as #VALUE!. */
  readonly written?: string;
}
/** Inline array (F25): rows of signed numbers, texts or logicals. */
export interface ArrayNode extends Span {
  readonly type: 'array';
  readonly rows: readonly (readonly (NumberNode | UnaryNode | TextNode | LogicalNode)[])[];
}
/** One corner of a reference; row and column count from 0. */
export interface Corner {
  readonly column: number;
  readonly row: number;
  readonly columnFixed: boolean;
  readonly rowFixed: boolean;
}
/** B3, $B$3, Feeds.B3. `worksheet` is the title as written, without quotation marks. */
export interface CellNode extends Span, Corner {
  readonly type: 'cell';
  readonly worksheet?: string;
}
/** B3:C9; corners in the order written. */
export interface RangeNode extends Span {
  readonly type: 'range';
  readonly worksheet?: string;
  readonly start: Corner;
  readonly end: Corner;
}
/** A name (F6a), or a column of a recording when `worksheet` names one. */
export interface NameNode extends Span {
  readonly type: 'name';
  readonly worksheet?: string;
  readonly name: string;
}
/** A function call. `name` in capitals; a skipped argument is a `missing` node. */
export interface CallNode extends Span {
  readonly type: 'call';
  readonly name: string;
  readonly nameSpan: Span;
  readonly args: readonly Node[];
}
export interface MissingNode extends Span {
  readonly type: 'missing';
}
export interface UnaryNode extends Span {
  readonly type: 'unary';
  readonly operator: UnaryOperator;
  readonly operand: Node;
}
export interface PercentNode extends Span {
  readonly type: 'percent';
  readonly operand: Node;
}
export interface BinaryNode extends Span {
  readonly type: 'binary';
  readonly operator: BinaryOperator;
  readonly left: Node;
  readonly right: Node;
  /** Set where inference reads plain numbers on the left in the unit on the right (F15): blanks, texts and logicals stay as they are. */
  readonly reads?: true;
}
/** Parentheses as typed: kept, so that printing gives back what was meant. */
export interface GroupNode extends Span {
  readonly type: 'group';
  readonly inner: Node;
}
/** A place where the text is unfinished or wrong; only in partial trees made for the editor. */
export interface BrokenNode extends Span {
  readonly type: 'broken';
  readonly parts: readonly Node[];
}

export type Node =
  | NumberNode
  | QuantityNode
  | TextNode
  | LogicalNode
  | ErrorNode
  | ArrayNode
  | CellNode
  | RangeNode
  | NameNode
  | CallNode
  | MissingNode
  | UnaryNode
  | PercentNode
  | BinaryNode
  | GroupNode
  | BrokenNode;
