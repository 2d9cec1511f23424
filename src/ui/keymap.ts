/** Keys of the page: which key means which move or command, the same wherever the focus stands (W3C APG grid pattern). */

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

export type GridAction =
  | { readonly type: 'move'; readonly move: Move; readonly extend: boolean }
  | { readonly type: 'jump'; readonly move: 'up' | 'down' | 'left' | 'right'; readonly extend: boolean }
  | { readonly type: 'edit' | 'clear' | 'undo' | 'redo' | 'selectAll' | 'save' | 'fillDown' };

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

/** What a key means while no cell is being edited; undefined leaves it to the browser. */
export function gridAction(event: KeyLike): GridAction | undefined {
  const command = event.ctrlKey || event.metaKey;
  if (event.altKey) return undefined;
  const move = MOVES.get(event.key);
  if (move) {
    if (!command) return { type: 'move', move, extend: event.shiftKey };
    if (move === 'home') return { type: 'move', move: 'first', extend: event.shiftKey };
    if (move === 'end') return { type: 'move', move: 'last', extend: event.shiftKey };
    if (move === 'up' || move === 'down' || move === 'left' || move === 'right')
      return { type: 'jump', move, extend: event.shiftKey };
    return undefined;
  }
  if (command) {
    const key = event.key.toLowerCase();
    if (key === 'z') return { type: event.shiftKey ? 'redo' : 'undo' };
    if (key === 'y') return { type: 'redo' };
    if (key === 'a') return { type: 'selectAll' };
    if (key === 's') return { type: 'save' };
    if (key === 'd') return { type: 'fillDown' };
    return undefined;
  }
  if (event.key === 'Enter' || event.key === 'F2') return { type: 'edit' };
  if (event.key === 'Delete' || event.key === 'Backspace') return { type: 'clear' };
  return undefined;
}
