/** Writes source.tar.gz into the build: whoever gets the program gets its complete source with it, without network. */

import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import type { Plugin } from 'vite';

const LEFT_OUT = new Set(['node_modules', 'dist', '.git']);
const BLOCK = 512;
const MODE = '0000644';

/** Paths of all files of the project, sorted. */
function filesOf(folder: string): string[] {
  return readdirSync(folder)
    .filter((name) => !LEFT_OUT.has(name))
    .flatMap((top) => {
      const path = join(folder, top);
      if (!statSync(path).isDirectory()) return [top];
      return readdirSync(path, { recursive: true, encoding: 'utf8' })
        .filter((name) => statSync(join(path, name)).isFile())
        .map((name) => `${top}/${name.replaceAll('\\', '/')}`);
    })
    .filter((path) => !path.endsWith('.log'))
    .sort();
}

/** One file as POSIX.1-1988 ustar has it: a header of 512 bytes, the content, zeros to the next block. Dates are 0, so that equal sources make equal archives. */
function entry(path: string, content: Buffer): Buffer {
  const header = Buffer.alloc(BLOCK);
  const cut = path.length > 100 ? path.lastIndexOf('/', 154) : -1;
  if (path.length - cut - 1 > 100) throw new Error(`the path is too long for an archive: ${path}`);
  header.write(path.slice(cut + 1), 0);
  header.write(MODE, 100);
  header.write('0000000', 108);
  header.write('0000000', 116);
  header.write(content.length.toString(8).padStart(11, '0'), 124);
  header.write('00000000000', 136);
  header.write('        0', 148);
  header.write('ustar', 257);
  header.write('00', 263);
  if (cut > 0) header.write(path.slice(0, cut), 345);
  const sum = header.reduce((total, byte) => total + byte, 0);
  header.write(`${sum.toString(8).padStart(6, '0')}\0 `, 148);
  return Buffer.concat([header, content, Buffer.alloc((BLOCK - (content.length % BLOCK)) % BLOCK)]);
}

/** The project below `folder` as a compressed archive, in a folder named swarfbook. */
export function sourceArchive(folder: string): Buffer {
  const entries = filesOf(folder).map((path) => entry(`swarfbook/${path}`, readFileSync(join(folder, path))));
  return gzipSync(Buffer.concat([...entries, Buffer.alloc(2 * BLOCK)]), { level: 9 });
}

export function source(folder: string): Plugin {
  return {
    name: 'swarfbook-source',
    apply: 'build',
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: 'source.tar.gz', source: sourceArchive(folder) });
    },
  };
}
