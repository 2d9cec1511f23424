/** Builds the page: one static folder that works from any path and without network. */

import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { examples } from './vite.examples.ts';
import { notices } from './vite.notices.ts';
import { source } from './vite.source.ts';

const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8')) as {
  version: string;
};

/** Which build this is: page and workers of one build belong together. The same sources give the same id. */
function buildId(): string {
  const given = process.env['SWARFBOOK_BUILD'];
  if (given) return given;
  const hash = createHash('sha256').update(readFileSync(new URL('package-lock.json', import.meta.url)));
  for (const folder of ['src', 'sheets']) {
    const home = join(import.meta.dirname, folder);
    for (const name of readdirSync(home, { recursive: true, encoding: 'utf8' }).sort()) {
      const path = join(home, name);
      if (statSync(path).isFile()) hash.update(name).update(readFileSync(path));
    }
  }
  return `${version}+${hash.digest('hex').slice(0, 10)}`;
}

const PUBLIC = 'src/public';
const MANIFEST = 'swarfbook.webmanifest';

/** Writes the list of the build's files into it: the page holds it against what lies in the cache before it calls itself ready without network. */
const keptFiles = (): Plugin => ({
  name: 'kept-files',
  apply: 'build',
  enforce: 'post',
  generateBundle: {
    order: 'post',
    handler(_, bundle) {
      const fileName = 'kept-files.json';
      const own = readdirSync(join(import.meta.dirname, PUBLIC));
      const files = new Set([...Object.keys(bundle), ...own, 'index.html', MANIFEST, fileName]);
      this.emitFile({ type: 'asset', fileName, source: JSON.stringify([...files].sort(), null, 1) });
    },
  },
});

/** Folders whose modules only say what they export: an index of theirs brings along no more than what is asked of it. */
const PLAIN = /\/src\/(?:quantity|numeric|expression|definition|document|calculation|workbook|exchange)\//;
const moduleSideEffects = (id: string): boolean => !PLAIN.test(id);

/** What the page needs at its start is one file: every file is a question to the service worker, and together they pack smaller. */
const AT_START = { name: 'start', tags: ['$initial' as const] };

const EVALUATOR = '@stdlib/utils-eval';

/** One library looks whether generators exist by evaluating a text, which the page's policy reports as an attack: it finds nothing here. */
const withoutEval = (): Plugin => ({
  name: 'without-eval',
  enforce: 'pre',
  resolveId: (id) => (id === EVALUATOR ? `\0${EVALUATOR}` : null),
  load: (id) =>
    id === `\0${EVALUATOR}`
      ? 'export default () => { throw new Error("texts are never evaluated"); };'
      : null,
});

export default defineConfig({
  base: './',
  define: {
    'import.meta.env.VITE_BUILD': JSON.stringify(buildId()),
    'import.meta.env.VITE_VERSION': JSON.stringify(version),
  },
  publicDir: PUBLIC,
  build: {
    target: 'es2022',
    outDir: 'dist',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: { treeshake: { moduleSideEffects }, output: { codeSplitting: { groups: [AT_START] } } },
  },
  worker: { format: 'es', plugins: () => [withoutEval()] },
  plugins: [
    withoutEval(),
    examples(import.meta.dirname),
    notices(import.meta.dirname),
    source(import.meta.dirname),
    keptFiles(),
    VitePWA({
      registerType: 'prompt',
      injectRegister: null,
      manifestFilename: MANIFEST,
      includeAssets: [],
      manifest: {
        id: './',
        name: 'Swarfbook',
        short_name: 'Swarfbook',
        description:
          'A calculation notebook for metal cutting: checked units in every cell, no network needed.',
        start_url: '.',
        scope: '.',
        display: 'standalone',
        background_color: '#d9dedd',
        theme_color: '#d9dedd',
        file_handlers: [{ action: '.', accept: { 'application/json': ['.json'] } }],
        share_target: {
          action: 'share',
          method: 'POST',
          enctype: 'multipart/form-data',
          params: {
            files: [{ name: 'file', accept: ['application/json', '.json', 'text/html', '.html', '.htm'] }],
          },
        },
        launch_handler: { client_mode: 'navigate-new' },
        icons: [
          { src: 'icon.svg', sizes: 'any', type: 'image/svg+xml' },
          { src: 'icon-192.png', sizes: '192x192', type: 'image/png' },
          { src: 'icon-512.png', sizes: '512x512', type: 'image/png' },
          { src: 'icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
        ],
      },
      workbox: {
        globPatterns: ['**/*.{html,js,css,svg,png,woff2,json,webmanifest,txt,gz}'],
        globIgnores: ['sw.js'],
        importScripts: ['receive-file.js'],
        navigateFallback: 'index.html',
        cleanupOutdatedCaches: true,
        clientsClaim: true,
        skipWaiting: false,
        inlineWorkboxRuntime: true,
        maximumFileSizeToCacheInBytes: 8_000_000,
        sourcemap: false,
      },
    }),
  ],
});
