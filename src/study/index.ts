export * from './direct-schedule.ts';
