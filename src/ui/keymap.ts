/** Keys of the page: which key means which move or command, the same wherever the focus stands (W3C APG grid pattern). */

import type { FillDirection } from '../document/index.ts';

export type Move =
  | 'up'
  | 'down'
  | 'left'
  | 'right'
  | 'pageUp'
  | 'pageDown'
  | 'home'
  | 'end'
  | 'first'
  | 'last';

export type Direction = 'up' | 'down' | 'left' | 'right';

export type GridAction =
  | { readonly type: 'move'; readonly move: Move; readonly extend: boolean }
  | { readonly type: 'jump'; readonly move: Direction; readonly extend: boolean }
  /** Moves the selected rows or columns themselves. */
  | { readonly type: 'carry'; readonly move: Direction }
  /** To the worksheet before or after. */
  | { readonly type: 'worksheet'; readonly by: 1 | -1 }
  | { readonly type: 'fill'; readonly direction: FillDirection }
  /** Makes the selected columns wider or narrower. */
  | { readonly type: 'widen'; readonly by: 1 | -1 }
  | {
      readonly type:
        | 'edit'
        | 'clear'
        | 'undo'
        | 'redo'
        | 'selectAll'
        | 'selectRows'
        | 'selectColumns'
        | 'save'
        | 'actions'
        | 'findNext'
        | 'findBefore';
    };

export interface KeyLike {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly shiftKey: boolean;
  readonly altKey: boolean;
}

const MOVES = new Map<string, Move>([
  ['ArrowUp', 'up'],
  ['ArrowDown', 'down'],
  ['ArrowLeft', 'left'],
  ['ArrowRight', 'right'],
  ['PageUp', 'pageUp'],
  ['PageDown', 'pageDown'],
  ['Home', 'home'],
  ['End', 'end'],
]);

const isDirection = (move: Move | undefined): move is Direction =>
  move === 'up' || move === 'down' || move === 'left' || move === 'right';

/** The direction of an arrow key. */
export function directionOf(key: string): Direction | undefined {
  const move = MOVES.get(key);
  return isDirection(move) ? move : undefined;
}

/** The worksheet a key goes to, while a formula is typed too: the one before or after. */
export function worksheetStep({ key, altKey, ctrlKey, metaKey, shiftKey }: KeyLike): 1 | -1 | undefined {
  if (!altKey || ctrlKey || metaKey || shiftKey) return undefined;
  return key === 'PageDown' ? 1 : key === 'PageUp' ? -1 : undefined;
}

function withAlt(event: KeyLike): GridAction | undefined {
  const by = worksheetStep(event);
  if (by) return { type: 'worksheet', by };
  const move = directionOf(event.key);
  if (!move || event.ctrlKey || event.metaKey) return undefined;
  if (event.shiftKey) return { type: 'carry', move };
  if (move === 'left' || move === 'right') return { type: 'widen', by: move === 'right' ? 1 : -1 };
  return move === 'down' ? { type: 'edit' } : undefined;
}

function withCommand(event: KeyLike): GridAction | undefined {
  const key = event.key.toLowerCase();
  if (key === 'z') return { type: event.shiftKey ? 'redo' : 'undo' };
  if (key === ' ') return { type: 'selectColumns' };
  if (key === 'd') return { type: 'fill', direction: event.shiftKey ? 'up' : 'down' };
  if (key === 'r') return { type: 'fill', direction: event.shiftKey ? 'left' : 'right' };
  if (event.shiftKey) return undefined;
  if (key === 'y') return { type: 'redo' };
  if (key === 'a') return { type: 'selectAll' };
  if (key === 's') return { type: 'save' };
  return undefined;
}

/** What a key means while no cell is being edited; undefined leaves it to the browser. */
export function gridAction(event: KeyLike): GridAction | undefined {
  const command = event.ctrlKey || event.metaKey;
  if (event.altKey) return withAlt(event);
  const move = MOVES.get(event.key);
  if (move) {
    const extend = event.shiftKey;
    if (!command) return { type: 'move', move, extend };
    if (move === 'home') return { type: 'move', move: 'first', extend };
    if (move === 'end') return { type: 'move', move: 'last', extend };
    return isDirection(move) ? { type: 'jump', move, extend } : undefined;
  }
  if (command) return withCommand(event);
  if (event.key === ' ' && event.shiftKey) return { type: 'selectRows' };
  if (event.key === 'ContextMenu' || (event.key === 'F10' && event.shiftKey)) return { type: 'actions' };
  if (event.key === 'F3') return { type: event.shiftKey ? 'findBefore' : 'findNext' };
  if (event.key === 'Enter' || event.key === 'F2') return { type: 'edit' };
  if (event.key === 'Delete' || event.key === 'Backspace') return { type: 'clear' };
  return undefined;
}
