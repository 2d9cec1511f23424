/** The walk: a notebook in which everything stands, with its leaves and panels. */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { closeLeaf, closeMargin, give, leaf, openLeaf, openPanel, pick, type Walk } from './walk-steps.ts';

interface File {
  id: string;
  program?: string;
  worksheets: { cells: Record<string, Record<string, unknown>> }[];
  results: Record<string, Record<string, { value: number }>>;
}

/** The shipped trial of two edges with a passed limit, an error, a caution, a choice, a note, and a result of an older program. */
export function fullNotebook(
  change: (cells: Record<string, Record<string, unknown>>) => void = () => {},
): string {
  const file = JSON.parse(
    readFileSync(join(import.meta.dirname, '../../sheets/edge-geometry-trial.json'), 'utf8'),
  ) as File;
  file.id = 'n-walk';
  file.program = '0.0.1+older';
  const { w1: results } = file.results;
  const [{ cells } = { cells: {} }] = file.worksheets;
  if (!results?.['B29']) throw new Error('the notebook has no result in B29');
  results['B29'] = { ...results['B29'], value: results['B29'].value * 1.1 };
  cells['B8'] = { ...cells['B8'], content: '6.5 min' };
  cells['D6'] = { content: '=B6+1 min' };
  cells['D7'] = { content: '=MILL.THINNING(50 mm; 0.2 mm)' };
  cells['D8'] = { content: 'dry', role: 'choice', choices: ['dry', 'emulsion', 'oil'] };
  cells['D9'] = { content: '12 mm', note: 'Read at the **third** tooth:\n\n- once dry\n- once wet' };
  change(cells);
  return JSON.stringify(file);
}

export async function walkNotebook(walk: Walk): Promise<void> {
  const { page, look } = walk;
  await page.getByText('Worked examples').waitFor();
  const open = page.getByRole('button', { name: 'Open a file…' });
  await give(page, () => open.click(), 'walk.json', fullNotebook());
  await page.locator('.band', { hasText: 'computed otherwise than stored' }).waitFor();
  await page.locator('page-grid td.active').waitFor();
  await look('results that differ');
  await leaf(walk, 'differences', 'differences-leaf tbody tr');
  await page.locator('.band').getByRole('button', { name: 'Understood' }).click();

  await pick(page, 'B8');
  await openPanel(walk, 'Working');
  await look('a passed limit');
  await closeMargin(walk);
  await look('a passed limit selected');
  await pick(page, 'D8');
  await leaf(walk, 'choices', 'choices-leaf textarea');
  await leaf(walk, 'cell', 'cell-properties select');
  await pick(page, 'D9');
  await leaf(walk, 'note', 'note-leaf li');
  await openPanel(walk, 'Working');
  await look('working of a value with a note');
  await openPanel(walk, /^Cautions/);
  await look('cautions of every sort');
  await openPanel(walk, /^Review/);
  await page.locator('review-walk .walk').focus();
  await page.keyboard.press('n');
  await page.locator('review-walk .formula').waitFor();
  await look('panel review');
  await openPanel(walk, 'Figures');
  await page.locator('margin-figures svg.figure').first().waitFor();
  await page.locator('margin-figures summary').first().click();
  await look('panel figures');
  await page.getByRole('button', { name: 'change…' }).click();
  await page.locator('figure-editor svg.figure').waitFor();
  await look('fields of a plot');
  await page.getByRole('button', { name: 'Discard' }).click();
  await page.getByLabel('New sketch').selectOption('engagement-down');
  await page.locator('figure-editor').waitFor();
  await look('fields of a sketch');
  await page.getByRole('button', { name: 'Discard' }).click();
  await closeMargin(walk);
  await leaf(walk, 'figure', 'figure-leaf svg.figure', 'f1');

  await leaf(walk, 'recordings', 'recordings-leaf table');
  await openLeaf(page, 'recordings');
  const log = page.locator('recordings-leaf').getByRole('button', { name: 'Read a log…' });
  await give(page, () => log.click(), 'Spindle.csv', 'Time [s];Load [%];Stamp\n0,5;12;08:00\n1,5;18;08:00\n');
  await page.locator('recordings-leaf').getByRole('button', { name: 'Read it in' }).waitFor();
  await look('a log before it is read');
  await closeLeaf(page);

  await openLeaf(page, 'hand-over');
  await page.locator('hand-over button').first().waitFor();
  await look('handing over what no link can carry');
  await closeLeaf(page);
  await openLeaf(page, 'compare');
  await look('comparing before a file is chosen');
  const received = fullNotebook((cells) => {
    cells['B6'] = { content: '0.25 mm' };
    cells['B14'] = { content: '8000 parts' };
    cells['C45'] = { content: 'one word more', role: 'note' };
  });
  const choose = page.getByRole('button', { name: 'Choose the received file…' });
  await give(page, () => choose.click(), 'received.json', received);
  await page.locator('compare-view tbody tr').first().waitFor();
  await page.locator('compare-view').getByRole('button', { name: 'Keep', exact: false }).nth(1).click();
  await look('leaf compare');
  await closeLeaf(page);

  await leaf(walk, 'trial-plan', 'trial-plan .count');
  await openLeaf(page, 'trial-record');
  await page.locator('trial-record tbody tr').first().waitFor();
  await look('leaf trial-record');
  await page
    .getByRole('button', { name: /^Correct pass/ })
    .first()
    .click();
  await page.locator('pass-form dialog[open]').waitFor();
  await look('a pass being corrected');
  await page.keyboard.press('Escape');
  await closeLeaf(page);
  await openLeaf(page, 'trial-reading');
  await page.locator('trial-reading plain-plot svg').first().waitFor();
  await look('leaf trial-reading');
  await closeLeaf(page);
}
