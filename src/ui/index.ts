export * from './after-frame.ts';
export * from './ports.ts';
export * from './saving.ts';
export * from './session.ts';
export { AppView } from './views/app-view.ts';
