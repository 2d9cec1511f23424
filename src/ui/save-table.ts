/** Tables for other programs as files: a worksheet as a grid, or every filled cell as a list with its metadata. Loaded when one is saved. */

import { writeCsvGrid, writeCsvList, writeCsvMetadata } from '../exchange/index.ts';
import { resultsFor } from './export-results.ts';
import type { Session } from './session.ts';

/** A file name that every system takes. */
const plain = (title: string): string => title.replaceAll(/[^\p{L}\p{N}\-_ ]+/gu, '').trim() || 'table';

export async function saveTable(session: Session, form: 'grid' | 'list' | 'described list'): Promise<void> {
  const { notebook, worksheet, world } = session;
  const results = resultsFor(session);
  if (form === 'grid') {
    const text = writeCsvGrid(notebook, worksheet.id, results);
    await world.files.save(`${plain(worksheet.title)}.csv`, text, 'text/csv');
    return;
  }
  const name = `${plain(notebook.title)} list.csv`;
  await world.files.save(name, writeCsvList(notebook, results), 'text/csv');
  if (form === 'described list')
    await world.files.save(
      `${name}-metadata.json`,
      writeCsvMetadata(notebook, name),
      'application/csvm+json',
    );
}
