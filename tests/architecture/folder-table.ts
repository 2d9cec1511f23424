/** Who may import whom: the folders of src/ with the folders and packages each may use. */

export interface FolderRule {
  readonly folders: readonly string[];
  /** Package names; a path in the folder ending in .ts limits the package to that one file. */
  readonly packages: Readonly<Record<string, 'anywhere' | `${string}.ts`>>;
  /** May touch the clock and randomness itself. */
  readonly impure?: boolean;
}

const STATISTICS = { '@stdlib/*': 'anywhere' } as const;

export const FOLDERS: Readonly<Record<string, FolderRule>> = {
  quantity: { folders: [], packages: { 'decimal.js': 'anywhere' } },
  numeric: { folders: [], packages: STATISTICS },
  expression: { folders: ['quantity'], packages: { 'decimal.js': 'evaluate-decimal.ts' } },
  builtins: { folders: ['quantity', 'numeric', 'expression', 'definition'], packages: STATISTICS },
  definition: { folders: ['quantity', 'expression'], packages: {} },
  functions: { folders: ['quantity', 'numeric', 'expression', 'definition'], packages: {} },
  document: { folders: ['quantity', 'expression'], packages: { valibot: 'anywhere' } },
  calculation: { folders: ['quantity', 'document'], packages: {} },
  workbook: { folders: ['quantity', 'expression', 'document', 'calculation'], packages: {} },
  engine: {
    folders: ['quantity', 'expression', 'definition', 'document', 'calculation', 'workbook'],
    packages: { hyperformula: 'library-schedule.ts' },
  },
  study: {
    folders: ['quantity', 'numeric', 'expression', 'definition', 'document', 'calculation', 'workbook'],
    packages: {},
  },
  trial: { folders: ['quantity', 'numeric', 'document'], packages: {} },
  exchange: {
    folders: ['quantity', 'expression', 'document'],
    packages: { papaparse: 'anywhere', valibot: 'anywhere' },
  },
  storage: {
    folders: ['quantity', 'document', 'exchange'],
    packages: { 'idb-keyval': 'database-leg.ts' },
    impure: true,
  },
  ui: {
    folders: [
      'quantity',
      'expression',
      'document',
      'exchange',
      'calculation',
      'definition',
      'storage',
      'trial',
    ],
    packages: { lit: 'anywhere', '@observablehq/plot': 'figures/plot-picture.ts', uqr: 'qr-code.ts' },
    impure: true,
  },
};
