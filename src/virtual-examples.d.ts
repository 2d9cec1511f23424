/** What the build tells of the shipped notebooks (vite.examples.ts). */
declare module 'virtual:examples' {
  export const EXAMPLES: readonly {
    /** As in the glob of sheets: "/sheets/pump-cover-boss.json". */
    readonly path: string;
    readonly title: string;
    /** The sentence in its first cell. */
    readonly question: string;
  }[];
}
