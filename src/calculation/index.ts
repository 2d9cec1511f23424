export * from './messages.ts';
