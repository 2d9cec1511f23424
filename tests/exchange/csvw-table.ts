/** A table read as its description says, and held against it ("V" and "M" as in csvw-rules.ts). */

import { columnsOf, isObject, isText, type Json } from './csvw-rules.ts';

export interface Dialect {
  readonly commentPrefix: string | null;
  readonly trim: boolean | 'start' | 'end';
  readonly delimiter: string;
  readonly quoteChar: string | null;
}

/** What holds where the description says nothing: V 5.9 each property, which differ from the flags of M 8 in the comment prefix. */
function dialectOf({ dialect }: Json): Dialect {
  const given = isObject(dialect) ? dialect : {};
  const { commentPrefix = '#', delimiter = ',', quoteChar = '"', trim = true } = given;
  return {
    commentPrefix: isText(commentPrefix) ? commentPrefix : null,
    delimiter: isText(delimiter) ? delimiter : ',',
    quoteChar: isText(quoteChar) ? quoteChar : null,
    trim: trim === 'start' || trim === 'end' ? trim : trim !== false && trim !== 'false',
  };
}

/** M 8: rows without the comments, cells trimmed outside quotes as the flag says. Quotes are those of RFC 4180. */
export function rowsOf(csv: string, { commentPrefix, trim, delimiter, quoteChar }: Dialect): string[][] {
  const rows: string[][] = [];
  let at = 0;
  const cell = (): string => {
    if (quoteChar !== null && csv[at] === quoteChar) {
      let value = '';
      for (at += 1; at < csv.length; at += 1) {
        if (csv[at] !== quoteChar) value += csv[at];
        else if (csv[at + 1] === quoteChar) value += csv[(at += 1)];
        else break;
      }
      at += 1;
      return value;
    }
    const from = at;
    while (at < csv.length && csv[at] !== delimiter && csv[at] !== '\n' && !csv.startsWith('\r\n', at))
      at += 1;
    const value = csv.slice(from, at);
    const start = trim === true || trim === 'start' ? value.trimStart() : value;
    return trim === true || trim === 'end' ? start.trimEnd() : start;
  };
  while (at < csv.length) {
    const comment = commentPrefix !== null && csv.startsWith(commentPrefix, at);
    const row = [cell()];
    while (csv[at] === delimiter) {
      at += 1;
      row.push(cell());
    }
    at += csv.startsWith('\r\n', at) ? 2 : 1;
    if (!comment) rows.push(row);
  }
  return rows;
}

const textsIn = (titles: unknown): readonly unknown[] =>
  isObject(titles) ? Object.values(titles).flat() : [titles].flat();

/** M 6.4 for columns of texts: null where the text is one of those that `null` names. */
function valueIn(text: string, column: Json): string | null {
  const { null: nulls = '', default: instead = '' } = column;
  const value = text === '' && isText(instead) ? instead : text;
  return [nulls].flat().includes(value) ? null : value;
}

/** What a table and its description do not have in common. `base` is the place of the description, `file` the table's name there. */
export function tableOffences(text: string, csv: string, base: string, file: string): string[] {
  const metadata = JSON.parse(text) as Json;
  const found: string[] = [];
  // V 5.1.2 and 5.4.1: relative to the place of the metadata.
  const { url } = metadata;
  if (!isText(url) || decodeURIComponent(new URL(url, base).href) !== base + file)
    found.push('V 5.4.1 url leads elsewhere');
  const schema = metadata['tableSchema'];
  const columns = columnsOf(schema).filter((column) => column['virtual'] !== true);
  // M 8 step 5: the decoder of the Encoding standard takes the byte order mark off.
  const [header = [], ...rows] = rowsOf(csv.replace(/^\ufeff/, ''), dialectOf(metadata));
  // V 5.5.1 (and M 6.6): as many columns, each with a title or name in common with the header, capitals included.
  if (header.length !== columns.length)
    found.push(`V 5.5.1 ${header.length} headers, ${columns.length} columns`);
  columns.forEach((column, k) => {
    const { name, titles } = column;
    if (titles === undefined && name === undefined) return;
    if (!textsIn(titles).includes(header[k]))
      found.push(`V 5.5.1 column ${k + 1} is not headed ${String(header[k])}`);
  });
  // M 4.4: each row has one cell of each column.
  for (const [k, row] of rows.entries()) if (row.length !== columns.length) found.push(`M 4.4 row ${k + 1}`);
  const values = rows.map((row) => columns.map((column, k) => valueIn(row[k] ?? '', column)));
  // M 6.4 steps 4 and 7: no null where a value is required.
  columns.forEach((column, k) => {
    if (column['required'] === true && values.some((row) => row[k] === null))
      found.push(`M 6.4 column ${k + 1} has a gap`);
  });
  // M 6.6 and V 5.5 primaryKey: no two rows with the same key.
  const { primaryKey } = isObject(schema) ? schema : {};
  const keys = columns.flatMap((column, k) => ([primaryKey].flat().includes(column['name']) ? [k] : []));
  const seen = new Set(values.map((row) => JSON.stringify(keys.map((k) => row[k]))));
  if (keys.length > 0 && seen.size < rows.length) found.push('M 6.6 two rows have the same key');
  return found;
}
