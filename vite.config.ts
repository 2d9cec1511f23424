/** Builds the page: one static folder that works from any path and without network. */

import { defineConfig } from 'vite';

export default defineConfig({
  base: './',
  publicDir: 'src/public',
  build: { target: 'es2022', outDir: 'dist' },
});
