/** Cells given to functions that take a single cell as a reference of one, not as its value: texts in it are passed over (OpenFormula 6.3.10). */

import type { FunctionTable, Node } from '../expression/index.ts';

function takesReferences(name: string, functions: FunctionTable): boolean {
  const called = functions.get(name);
  return called !== undefined && 'cellsAsRanges' in called && called.cellsAsRanges === true;
}

/** A cell as the range of this one cell. */
function asRange(node: Node): Node {
  if (node.type !== 'cell') return node;
  const { from, to, worksheet, column, row, columnFixed, rowFixed } = node;
  const corner = { column, row, columnFixed, rowFixed };
  return {
    type: 'range',
    from,
    to,
    start: corner,
    end: corner,
    ...(worksheet !== undefined && { worksheet }),
  };
}

/** The same tree where nothing is to be changed. */
export function withReferenceArguments(node: Node, functions: FunctionTable): Node {
  const inner = (each: Node): Node => withReferenceArguments(each, functions);
  switch (node.type) {
    case 'call': {
      const taken = takesReferences(node.name, functions);
      const args = node.args.map((arg) => (taken ? asRange(inner(arg)) : inner(arg)));
      return args.every((arg, index) => arg === node.args[index]) ? node : { ...node, args };
    }
    case 'unary':
    case 'percent': {
      const operand = inner(node.operand);
      return operand === node.operand ? node : { ...node, operand };
    }
    case 'binary': {
      const [left, right] = [inner(node.left), inner(node.right)];
      return left === node.left && right === node.right ? node : { ...node, left, right };
    }
    case 'group': {
      const within = inner(node.inner);
      return within === node.inner ? node : { ...node, inner: within };
    }
    default:
      return node;
  }
}
