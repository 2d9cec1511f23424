import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { noticesText } from '../vite.notices.ts';

const root = join(import.meta.dirname, '..');

test('the notices name every package that the program may carry, with its version', () => {
  const text = noticesText(root);
  const { dependencies } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
    dependencies: Record<string, string>;
  };
  const missing = Object.entries(dependencies).filter(
    ([name, version]) => !text.includes(`${name} ${version} (`),
  );
  expect(missing).toEqual([]);
});

test('the notices hold the texts of the licences, not only their names', () => {
  const text = noticesText(root);
  for (const words of [
    'GNU GENERAL PUBLIC LICENSE',
    'Apache License',
    'SIL OPEN FONT LICENSE',
    'Permission is hereby granted',
  ]) {
    expect(text).toContain(words);
  }
});
