/** What stands in the columns of a list, for programs that read W3C tabular metadata (CSVW, Metadata Vocabulary for Tabular Data, 2015). */

import type { Notebook } from '../document/index.ts';
import { lineJson } from './canonical-json.ts';
import { LIST_HEADERS } from './write-csv.ts';

const MEANINGS: Readonly<Record<(typeof LIST_HEADERS)[number], string>> = {
  worksheet: 'Title of the worksheet',
  cell: 'Address of the cell, column letters and row number',
  name: 'Name that formulas use for the cell',
  symbol: 'How the name is shown',
  label: 'What the cell is called',
  value: 'Number in the unit beside it, text, TRUE, FALSE, date or error; a leading apostrophe marks text',
  unit: 'Unit as shown',
  'UCUM code': 'The unit in the Unified Code for Units of Measure',
  role: 'given, worked, measured, choice or note',
  formula: 'The formula behind a leading apostrophe; empty for what was typed',
};

/** The metadata file of a list, to be saved beside it; `url` is the name of the list's file. */
export function writeCsvMetadata(notebook: Notebook, url: string): string {
  const columns = LIST_HEADERS.map((header) => ({
    name: header.replace(' ', '_'),
    titles: header,
    datatype: 'string',
    ...((header === 'worksheet' || header === 'cell') && { required: true }),
    'dc:description': MEANINGS[header],
  }));
  const metadata = {
    '@context': 'http://www.w3.org/ns/csvw',
    url: encodeURIComponent(url),
    'dc:title': notebook.title,
    // Spaces around a value belong to it: left out, `trim` would be true.
    dialect: {
      delimiter: ',',
      encoding: 'utf-8',
      header: true,
      quoteChar: '"',
      doubleQuote: true,
      trim: false,
    },
    tableSchema: { columns, primaryKey: ['worksheet', 'cell'] },
  };
  return `${lineJson(metadata)}\n`;
}
