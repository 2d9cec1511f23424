export * from './function-definition.ts';
