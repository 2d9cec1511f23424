/** What the domain library shows besides its definitions, which the catalogue collects file by file. */

export { SOURCES, type Source } from './sources.ts';
export { MATERIALS } from './materials.table.ts';
