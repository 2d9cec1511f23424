export * from './tree.ts';
export * from './value.ts';
export * from './type.ts';
export * from './function-table.ts';
export * from './operators.ts';
export * from './inference-context.ts';
export * from './compile-scalar.ts';
