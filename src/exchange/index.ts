export * from './stored-result.ts';
export * from './write-notebook.ts';
export * from './read-notebook.ts';
export { FILE_LIMITS } from './guarded-json.ts';
export * from './write-csv.ts';
export * from './read-csv.ts';
export * from './csv-metadata.ts';
export * from './import-table.ts';
export * from './compare-notebooks.ts';
