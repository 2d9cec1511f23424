/** Writes notices.txt into the build: the licence texts of every package that the program may carry, so that they can be read offline. */

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Plugin } from 'vite';

interface Manifest {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
  readonly dependencies?: Readonly<Record<string, string>>;
}

interface Notice {
  /** "lit 3.3.3 (BSD-3-Clause)" */
  readonly title: string;
  readonly text: string;
}

const manifestOf = (folder: string): Manifest =>
  JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as Manifest;

/** The folder that `name` resolves to from `folder`, looking upwards as Node does. */
function homeOf(name: string, folder: string): string {
  const home = join(folder, 'node_modules', name);
  if (existsSync(join(home, 'package.json'))) return home;
  if (dirname(folder) === folder) throw new Error(`package ${name} is not installed`);
  return homeOf(name, dirname(folder));
}

function noticeOf(home: string, { name, version, license }: Manifest): Notice {
  const file = readdirSync(home).find((entry) => /^(licen[cs]e|copying)/i.test(entry));
  const text = file ? readFileSync(join(home, file), 'utf8').replaceAll('\r\n', '\n').trim() : '';
  return { title: `${name} ${version} (${license ?? 'licence: see text'})`, text };
}

/** Notices of the packages below `folder`'s manifest, each package once. */
export function noticesBelow(folder: string, found = new Map<string, Notice>()): ReadonlyMap<string, Notice> {
  for (const name of Object.keys(manifestOf(folder).dependencies ?? {})) {
    const home = homeOf(name, folder);
    if (found.has(home)) continue;
    found.set(home, noticeOf(home, manifestOf(home)));
    noticesBelow(home, found);
  }
  return found;
}

/** One document: the program's own licence first, then each licence text once, under the packages that share it. */
export function noticesText(folder: string): string {
  const byText = new Map<string, string[]>();
  for (const { title, text } of noticesBelow(folder).values()) {
    byText.set(text, [...(byText.get(text) ?? []), title]);
  }
  const parts = [...byText].map(([text, titles]) => `${titles.sort().join('\n')}\n\n${text}`.trim());
  const own = readFileSync(join(folder, 'LICENSE'), 'utf8').trim();
  return `${[
    'Swarfbook is free software under the GNU General Public License, version 3 only.\n\n' + own,
    ...parts,
  ].join(`\n\n${'='.repeat(78)}\n\n`)}\n`;
}

export function notices(folder: string): Plugin {
  return {
    name: 'swarfbook-notices',
    apply: 'build',
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: 'notices.txt', source: noticesText(folder) });
    },
  };
}
