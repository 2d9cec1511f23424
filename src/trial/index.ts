export * from './plan-trial.ts';
export * from './trial-commands.ts';
export * from './correct-pass.ts';
export * from './wear-curve.ts';
export * from './compare-lives.ts';
export * from './taylor-reading.ts';
export * from './read-trial.ts';
export * from './decide.ts';
export { cutUnitOf, DEFAULT_CUT_UNIT } from './trial-quantity.ts';
