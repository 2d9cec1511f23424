export * from './cache-leg.ts';
export * from './chain.ts';
export * from './database-leg.ts';
export * from './file-doors.ts';
export * from './leg.ts';
export * from './notebook-lock.ts';
export * from './program-on-device.ts';
export * from './shelf.ts';
