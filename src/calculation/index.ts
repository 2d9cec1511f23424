export * from './messages.ts';
export * from './calculator.ts';
export * from './packed-address.ts';
export * from './study-messages.ts';
