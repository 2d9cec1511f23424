export * from './tree.ts';
export * from './value.ts';
export * from './type.ts';
export * from './function-table.ts';
