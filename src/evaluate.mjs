/** Starts the command line: builds its bundle where a source is newer, then runs it. */

import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const source = dirname(fileURLToPath(import.meta.url));
const root = dirname(source);
const home = join(root, 'node_modules', '.swarfbook');
const bundle = join(home, 'evaluate.mjs');

/** Folders that the command line does not use. */
const FOREIGN = new Set(['ui', 'storage', 'public', 'study']);

/** Time of the newest file that the bundle is made of, in ms; folders count, for what was taken out of them. */
function newest(folder) {
  let time = statSync(folder).mtimeMs;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    if (entry.isDirectory()) {
      if (!FOREIGN.has(entry.name)) time = Math.max(time, newest(join(folder, entry.name)));
    } else if (/\.(?:ts|mjs|json)$/.test(entry.name)) {
      time = Math.max(time, statSync(join(folder, entry.name)).mtimeMs);
    }
  }
  return time;
}

/** What the build needs, where nothing is installed yet; npm's own words go to the error stream, results stay alone on the other. */
function install() {
  spawnSync('npm', ['install', '--prefer-offline', '--no-audit', '--no-fund'], {
    cwd: root,
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
  });
}

async function build() {
  if (!existsSync(join(root, 'node_modules', 'vite'))) install();
  const { build: viteBuild } = await import('vite');
  // A folder of its own, renamed at the end: two starts at once do not read each other's half.
  const outDir = join(home, `evaluate-${process.pid}`);
  await viteBuild({
    root,
    configFile: false,
    logLevel: 'error',
    publicDir: false,
    ssr: { noExternal: true },
    build: {
      ssr: join(source, 'evaluate.ts'),
      outDir,
      target: 'node20',
      minify: true,
      rollupOptions: { output: { entryFileNames: 'evaluate.mjs', codeSplitting: false } },
    },
  });
  renameSync(join(outDir, 'evaluate.mjs'), bundle);
  rmSync(outDir, { recursive: true });
}

if (!existsSync(bundle) || statSync(bundle).mtimeMs < newest(source)) await build();
const { main } = await import(pathToFileURL(bundle).href);
process.exitCode = main(process.argv.slice(2));
