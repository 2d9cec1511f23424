/** Which call the caret stands in, for argument hints; works on unfinished text. */

import { tokenize } from './tokenize.ts';
import type { SyntaxOptions } from './token.ts';
import type { Span } from './tree.ts';

export interface OpenCall {
  /** In capitals. */
  readonly name: string;
  readonly nameSpan: Span;
  /** Which argument the caret stands in, from 0. */
  readonly argument: number;
  /** Where that argument begins: behind the bracket or the separator. */
  readonly from: number;
}

/** The innermost call that is open at the caret (an offset in the text); undefined outside of all calls. */
export function callAt(text: string, caret: number, options: SyntaxOptions = {}): OpenCall | undefined {
  /** undefined for a bracket or an array, whose separators part no arguments. */
  const open: (OpenCall | undefined)[] = [];
  let callee: Pick<OpenCall, 'name' | 'nameSpan'> | undefined;
  for (const token of tokenize(text, options)) {
    if (token.to > caret) break;
    const { type, from, to, value } = token;
    if (type === 'open') open.push(callee && { ...callee, argument: 0, from: to });
    else if (type === 'openArray') open.push(undefined);
    else if (type === 'close' || type === 'closeArray') open.pop();
    else if (type === 'separator') {
      const last = open.pop();
      open.push(last && { ...last, argument: last.argument + 1, from: to });
    }
    callee = type === 'function' ? { name: value, nameSpan: { from, to } } : undefined;
  }
  return open.findLast((each) => each !== undefined);
}
