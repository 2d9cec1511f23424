export * from './dimension.ts';
export * from './kind.ts';
