/** Everything in the notebook that asks for a look: errors, clashes, cautions, breaches, assumed units. */

import type { CellAddress, ResultCaution } from '../calculation/index.ts';
import { findWorksheet } from '../document/index.ts';
import type { Session } from './session.ts';

export interface OpenCaution {
  readonly address: CellAddress;
  readonly type: 'error' | 'caution' | 'breach' | 'assumed';
  readonly text: string;
  readonly key?: string;
  readonly acknowledged?: string;
  /** The reading that may be meant instead, and what of the formula it stands for. */
  readonly replacement?: string;
  readonly from?: number;
  readonly to?: number;
  readonly root?: CellAddress;
}

const ORDER = { error: 0, breach: 1, caution: 2, assumed: 3 } as const;
const known = new WeakMap<Session, { readonly version: number; readonly list: readonly OpenCaution[] }>();

/** The same words of one cell count once. */
export function distinct(cautions: readonly ResultCaution[]): readonly ResultCaution[] {
  return cautions.filter((each, k) => cautions.findIndex((other) => other.text === each.text) === k);
}

/** In order of weight, then of worksheets, rows and columns. */
export function openCautions(session: Session): readonly OpenCaution[] {
  const before = known.get(session);
  if (before?.version === session.version) return before.list;
  const list: OpenCaution[] = [];
  session.results.forEachFlagged((result, worksheet, row, column) => {
    if (!findWorksheet(session.notebook, worksheet)) return;
    const address = { worksheet, row, column };
    if (result.error) {
      const { code, message, root } = result.error;
      list.push({ address, type: 'error', text: `${code} ${message}`, ...(root && { root }) });
    }
    for (const { type, text, key, acknowledged, ...press } of distinct(result.cautions))
      list.push({ address, type, text, key, ...press, ...(acknowledged !== undefined && { acknowledged }) });
  });
  const place = new Map(session.notebook.worksheets.map(({ id }, k) => [id, k]));
  const rank = ({ address }: OpenCaution): number =>
    (place.get(address.worksheet) ?? 0) * 2 ** 17 + address.row * 64 + address.column;
  list.sort((a, b) => ORDER[a.type] - ORDER[b.type] || rank(a) - rank(b));
  known.set(session, { version: session.version, list });
  return list;
}
