export * from './ports.ts';
export * from './session.ts';
export { AppView } from './views/app-view.ts';
