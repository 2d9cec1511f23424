export * from './engine.ts';
export type { ResultsMessage, FullResult } from './result-message.ts';
