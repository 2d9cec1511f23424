export * from './notebook.ts';
export * from './change.ts';
