export * from './direct-schedule.ts';
export * from './plan.ts';
export * from './refused.ts';
export * from './study-book.ts';
export * from './study.ts';
