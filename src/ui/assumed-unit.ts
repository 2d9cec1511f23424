/** Writing an assumed unit into the formula (F15): "0.1 read as 0.1 mm" becomes 0.1 mm. */

import { enter } from '../document/index.ts';
import { tokenize } from '../expression/index.ts';
import type { Session } from './session.ts';

const NOTE = /^(\S+) read as (\S.*)$/;

/** The formula with the unit in place; undefined where it is not clear which number is meant. */
function withUnit(content: string, note: string): string | undefined {
  const [, number, quantity] = NOTE.exec(note) ?? [];
  if (number === undefined || quantity === undefined || !content.startsWith('=')) return undefined;
  const tokens = tokenize(content);
  const plain = tokens.filter(
    (token, k) =>
      token.type === 'number' &&
      content.slice(token.from, token.to) === number &&
      tokens[k + 1]?.type !== 'unit' &&
      tokens[k + 1]?.type !== 'percent',
  );
  const [token] = plain;
  if (!token || plain.length > 1) return undefined;
  return content.slice(0, token.from) + quantity + content.slice(token.to);
}

export const canWriteUnit = (session: Session, note: string): boolean =>
  withUnit(session.cell?.content ?? '', note) !== undefined;

export function writeUnit(session: Session, note: string): void {
  const typed = withUnit(session.cell?.content ?? '', note);
  if (typed !== undefined) session.run(enter(session.notebook, { ...session.address, typed }));
}
