/** Reading a notebook from wherever it comes: fetched when a file or a link is opened. */

export { readAnyNotebook, readLink } from '../exchange/index.ts';
