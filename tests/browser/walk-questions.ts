/** The walk: what-if, each question with its answer, and the variants side by side. */

import { closeMargin, leaf, openPanel, type Walk } from './walk-steps.ts';

/** The kept question that is asked in each section. */
const ASKED = [
  ['Solve', 'inserts on the ring for the rate', '.answer'],
  ['Search', 'largest rate that keeps the facets low', '.answer'],
  ['Sweep', 'feed on the journal: rate, chip, facets', 'table'],
] as const;

export async function walkQuestions(walk: Walk): Promise<void> {
  const { page, look } = walk;
  await page.getByRole('button', { name: /^Crank line: pins/ }).click();
  await page.locator('page-grid td.active').waitFor();
  await openPanel(walk, 'What-if');
  const panel = page.locator('margin-what-if');
  const section = (name: string): Promise<void> =>
    page.getByRole('group', { name: 'kind of question' }).getByRole('button', { name, exact: true }).click();
  await panel.getByRole('radio').first().waitFor();
  await look('panel what-if');
  for (const [name, kept, answer] of ASKED) {
    await section(name);
    await page.getByRole('button', { name: kept, exact: true }).click();
    await panel.locator('.ask button').first().click();
    await panel.locator(answer).first().waitFor();
    await look(`${name} with its answer`);
  }
  await section('Spread');
  await panel.getByRole('button', { name: /^Let .* spread$/ }).click();
  await panel.getByLabel('samples').fill('1000');
  await panel.getByRole('button', { name: 'Work the spread out' }).click();
  await panel.locator('section dl').first().waitFor();
  await look('Spread with its answer');
  await section('Variants');
  await panel.getByRole('radio').nth(1).check();
  await closeMargin(walk);
  await page.locator('desk-head .variant').waitFor();
  await look('a variant on the page');
  await leaf(walk, 'variants', 'variants-table td.best');
}
