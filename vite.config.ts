/** Builds the page: one static folder that works from any path and without network. */

import { defineConfig } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';
import { notices } from './vite.notices.ts';

export default defineConfig({
  base: './',
  publicDir: 'src/public',
  build: { target: 'es2022', outDir: 'dist', assetsInlineLimit: 0, modulePreload: { polyfill: false } },
  worker: { format: 'es' },
  plugins: [
    notices(import.meta.dirname),
    VitePWA({
      registerType: 'prompt',
      injectRegister: null,
      manifestFilename: 'swarfbook.webmanifest',
      includeAssets: [],
      manifest: {
        id: './',
        name: 'Swarfbook',
        short_name: 'Swarfbook',
        description: 'A calculation notebook for metal cutting: checked units in every cell, no network needed.',
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
        globPatterns: ['**/*.{html,js,css,svg,png,woff2,json,webmanifest,txt}'],
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
