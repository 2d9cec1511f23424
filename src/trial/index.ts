export * from './plan-trial.ts';
export * from './trial-commands.ts';
export * from './correct-pass.ts';
export { cutUnitOf, DEFAULT_CUT_UNIT } from './trial-quantity.ts';
