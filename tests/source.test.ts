/** The source that travels with the program, unpacked by the archiver of the operating system. */

import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { sourceArchive } from '../vite.source.ts';

const root = join(import.meta.dirname, '..');

test('the archive holds what is needed to build the program again, byte for byte', () => {
  const folder = mkdtempSync(join(tmpdir(), 'swarfbook-source-'));
  try {
    writeFileSync(join(folder, 'source.tar.gz'), sourceArchive(root));
    execFileSync('tar', ['-xzf', 'source.tar.gz'], { cwd: folder });
    for (const path of [
      'LICENSE',
      'README.md',
      'index.html',
      'package.json',
      'package-lock.json',
      'tsconfig.json',
      'vite.config.ts',
      'vite.source.ts',
      'src/main.ts',
      'src/public/icon-192.png',
      'sheets/pump-cover-boss.json',
      'tests/source.test.ts',
    ])
      expect(readFileSync(join(folder, 'swarfbook', path)).equals(readFileSync(join(root, path))), path).toBe(
        true,
      );
    const listed = execFileSync('tar', ['-tzf', 'source.tar.gz'], { cwd: folder, encoding: 'utf8' });
    expect(listed).not.toMatch(/node_modules|\.git\//);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
