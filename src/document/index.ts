export * from './notebook.ts';
export * from './change.ts';
export * from './refusal.ts';
export * from './cells.ts';
export * from './apply.ts';
export * from './history.ts';
export * from './empty-notebook.ts';
export * from './resolve-name.ts';
