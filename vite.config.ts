/** Builds the page: one static folder that works from any path and without network. */

import { readFileSync } from 'node:fs';
import { defineConfig, type Plugin } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { notices } from './vite.notices.ts';
import { source } from './vite.source.ts';

const { version } = JSON.parse(readFileSync(new URL('package.json', import.meta.url), 'utf8')) as {
  version: string;
};

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
  define: { 'import.meta.env.VITE_BUILD': JSON.stringify(version) },
  publicDir: 'src/public',
  build: { target: 'es2022', outDir: 'dist', assetsInlineLimit: 0, modulePreload: { polyfill: false } },
  worker: { format: 'es', plugins: () => [withoutEval()] },
  plugins: [
    withoutEval(),
    notices(import.meta.dirname),
    source(import.meta.dirname),
    VitePWA({
      registerType: 'prompt',
      injectRegister: null,
      manifestFilename: 'swarfbook.webmanifest',
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
