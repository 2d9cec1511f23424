/** Reads source files and lists what breaks the table of folders: pure, so that planted offenders can test it. */

import { posix } from 'node:path';
import { parseSync } from 'vite';
import type { FolderRule } from './folder-table.ts';

/** A file by its path below src/, with forward slashes. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

interface Import {
  readonly specifier: string;
  readonly typeOnly: boolean;
}

const LONGEST_FILE = 400;

function importsOf(file: SourceFile): Import[] {
  const { module, errors } = parseSync(file.path, file.text);
  if (errors.length > 0) throw new Error(`${file.path} can not be parsed: ${errors[0]?.message}`);
  const fixed = module.staticImports.map((found) => ({
    specifier: found.moduleRequest.value,
    typeOnly: found.entries.length > 0 && found.entries.every((entry) => entry.isType),
  }));
  const passedOn = module.staticExports.flatMap((found) =>
    found.entries.flatMap((entry) =>
      entry.moduleRequest ? [{ specifier: entry.moduleRequest.value, typeOnly: entry.isType }] : [],
    ),
  );
  const dynamic = module.dynamicImports.map((found) => ({
    specifier: file.text.slice(found.moduleRequest.start + 1, found.moduleRequest.end - 1),
    typeOnly: false,
  }));
  return [...fixed, ...passedOn, ...dynamic];
}

const folderOf = (path: string): string | undefined =>
  path.includes('/') ? path.slice(0, path.indexOf('/')) : undefined;

const packageOf = (specifier: string): string =>
  specifier.split('/', specifier.startsWith('@') ? 2 : 1).join('/');

function allowedPackage(rule: FolderRule, name: string, file: string): boolean {
  const where = rule.packages[name] ?? rule.packages[`${name.split('/')[0]}/*`];
  return where === 'anywhere' || (where !== undefined && file.endsWith(`/${where}`));
}

/** Every offence against the table, as sentences; empty when the house is in order. */
export function offences(
  files: readonly SourceFile[],
  table: Readonly<Record<string, FolderRule>>,
): string[] {
  const found: string[] = [];
  const uses = new Map<string, string[]>();
  for (const file of files) {
    const folder = folderOf(file.path);
    const rule = folder === undefined ? undefined : table[folder];
    if (folder !== undefined && !rule) found.push(`${file.path}: the table has no folder ${folder}`);
    if (!/\.(table|styles)\.ts$/.test(file.path) && file.text.split('\n').length - 1 > LONGEST_FILE)
      found.push(`${file.path}: longer than ${LONGEST_FILE} lines`);
    if (rule && !rule.impure && /\bMath\.random\b|\bDate\.now\b|\bnew Date\(\)/.test(file.text))
      found.push(`${file.path}: reads the clock or chance itself`);
    const values: string[] = [];
    for (const { specifier, typeOnly } of importsOf(file)) {
      if (!specifier.startsWith('.')) {
        if (rule && !allowedPackage(rule, packageOf(specifier), file.path))
          found.push(`${file.path}: package ${packageOf(specifier)} is not for ${folder}`);
        continue;
      }
      const target = posix.join(posix.dirname(file.path), specifier.replace(/\?.*$/, ''));
      if (!typeOnly) values.push(target);
      const there = folderOf(target);
      if (folder === there) continue;
      if (there === 'ui' && folder !== undefined) found.push(`${file.path}: imports ui`);
      else if (rule && (there === undefined || !rule.folders.includes(there)))
        found.push(`${file.path}: ${folder} may not import ${there ?? target}`);
      if (there !== undefined && there !== '..' && !target.endsWith('/index.ts') && folder !== undefined)
        found.push(`${file.path}: reaches past the index of ${there}`);
    }
    uses.set(file.path, values);
  }
  return [...found, ...cycles(uses)];
}

/** Cycles of imports that carry values (types vanish before anything runs), each named once by its path. */
function cycles(uses: ReadonlyMap<string, readonly string[]>): string[] {
  const found: string[] = [];
  const state = new Map<string, 'open' | 'done'>();
  const path: string[] = [];
  const visit = (file: string): void => {
    if (state.get(file) === 'done') return;
    if (state.get(file) === 'open') {
      found.push(`cycle: ${[...path.slice(path.indexOf(file)), file].join(' -> ')}`);
      return;
    }
    state.set(file, 'open');
    path.push(file);
    for (const next of uses.get(file) ?? []) if (uses.has(next)) visit(next);
    path.pop();
    state.set(file, 'done');
  };
  for (const file of uses.keys()) visit(file);
  return found;
}
