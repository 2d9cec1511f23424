/** The machine-side page as a gloved thumb meets it: steps, limits, keypad, cautions, undo, values as received. */

import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { desksOfTests, drawn, enter, goTo, newNotebook, shows, losesNotebook } from './desk.ts';

const desks = desksOfTests();

const SIZES = [
  { width: 820, height: 1180 },
  { width: 390, height: 844 },
  { width: 1366, height: 768 },
];

/** The shipped pump cover at the machine, on a screen that is touched. */
async function atMachine(size = SIZES[0], who: readonly string[] = ['JK']): Promise<Page> {
  const desk = await desks.open();
  if (!size) throw new Error('no size');
  const page = await desk.anotherProfile({ viewport: size, hasTouch: true, isMobile: false });
  await page.addInitScript((names) => {
    if (localStorage.getItem('who') === null) localStorage.setItem('who', names);
  }, JSON.stringify(who));
  await page.goto(desk.address);
  await page.locator('section[aria-label=templates] button', { hasText: /pump/i }).tap();
  await page.getByRole('button', { name: 'At the machine' }).tap();
  await result(page, 'B21', '2817 mm/min');
  return page;
}

const field = (page: Page, address: string): ReturnType<Page['locator']> =>
  page.locator(`machine-page .field[data-cell=${address}]`);
async function value(page: Page, address: string): Promise<string> {
  await drawn(page);
  return page.locator(`machine-page [data-field=${address}]`).inputValue();
}
const press = async (page: Page, ...names: string[]): Promise<void> => {
  for (const name of names)
    await page.locator('on-screen-keypad').getByRole('button', { name, exact: true }).tap();
};
const step = (page: Page, address: string, way: 'more' | 'less'): Promise<void> =>
  field(page, address)
    .getByRole('button', { name: new RegExp(`${way}$`) })
    .tap({ force: true });
const DONE = 'Done: take it and put the keypad away';

/** Waits until a worked value shows this. */
async function result(page: Page, address: string, text: string): Promise<void> {
  const place = page.locator(`machine-page .result[data-cell=${address}]`);
  const until = Date.now() + 8_000;
  let seen = '';
  while (Date.now() < until) {
    seen = (
      await place
        .locator('.number, .decision')
        .innerText()
        .catch(() => '')
    )
      .replaceAll(/\s+/g, ' ')
      .trim();
    if (seen === text) return;
    await page.waitForTimeout(40);
  }
  throw new Error(`${address} shows "${seen}", not "${text}"`);
}

test('one press turns the worksheet into its machine side: fields, results, decision, cautions and nothing else', async () => {
  const page = await atMachine();
  expect(await page.locator('machine-page .field').count()).toBe(3);
  expect(await page.locator('machine-page .result').count()).toBe(5);
  expect(await page.locator('page-grid').count()).toBe(0);
  await result(page, 'B39', 'yes: program 2817 mm/min');
  expect(await field(page, 'B9').innerText()).toContain('0.2 to 5 mm');
  expect(await page.locator('machine-page .usual').innerText()).toContain('a qualified person decide');
  expect(desks.current.troubles).toEqual([]);
});

test('a step writes through the same command as the desk and everything is worked out again', async () => {
  const page = await atMachine();
  await step(page, 'B11', 'more');
  expect(await value(page, 'B11')).toBe('270');
  // 270 m/min over a circumference of pi * 50 mm is 1718.87 1/min, worked by hand.
  await result(page, 'B17', '1719 1/min');
  await step(page, 'B9', 'more');
  expect(await value(page, 'B9')).toBe('1.6');
  await step(page, 'B12', 'more');
  await step(page, 'B12', 'more');
  expect(await value(page, 'B12')).toBe('0.10');
  await page.getByRole('button', { name: 'Undo' }).tap();
  expect(await value(page, 'B12')).toBe('0.09');
  await page.getByRole('button', { name: 'Values as received' }).tap();
  expect([await value(page, 'B9'), await value(page, 'B11'), await value(page, 'B12')]).toEqual([
    '1.5',
    '260',
    '0.08',
  ]);
  await result(page, 'B17', '1655 1/min');
  await page.getByRole('button', { name: 'Undo' }).tap();
  expect([await value(page, 'B9'), await value(page, 'B11'), await value(page, 'B12')]).toEqual([
    '1.6',
    '270',
    '0.09',
  ]);
  await page.getByRole('button', { name: 'Back to the desk' }).tap();
  await shows(page, 'B11', '270 m/min');
});

test('steps end on the limit and say its own words; typing beyond it is a visible breach', async () => {
  const page = await atMachine();
  await page.locator('[data-field=B9]').tap();
  await press(page, '4', 'decimal point', '9', '5', DONE);
  expect(await value(page, 'B9')).toBe('4.95');
  await step(page, 'B9', 'more');
  expect(Number(await value(page, 'B9'))).toBe(5);
  await step(page, 'B9', 'more');
  expect(Number(await value(page, 'B9'))).toBe(5);
  expect(await field(page, 'B9').locator('.message').innerText()).toContain('more than this is roughing');
  await page.locator('[data-field=B9]').tap();
  await press(page, '6', 'decimal point', '5');
  await page
    .locator('on-screen-keypad .passed', { hasText: 'above 5 mm (more than this is roughing)' })
    .waitFor();
  await press(page, DONE);
  // Without a reason it stays as it was; with one it is taken, and the reason stands beside it.
  const asked = page.locator('machine-ask dialog');
  await asked.getByRole('button', { name: 'Leave it' }).tap();
  expect(Number(await value(page, 'B9'))).toBe(5);
  await page.locator('[data-field=B9]').tap();
  await press(page, '6', 'decimal point', '5', DONE);
  await asked.getByRole('button', { name: 'Agreed with a qualified person' }).tap();
  await field(page, 'B9').locator('.set', { hasText: 'Agreed with a qualified person' }).waitFor();
  await field(page, 'B9')
    .locator('.message', { hasText: 'above 5 mm (more than this is roughing)' })
    .waitFor();
  await page
    .locator('machine-page .cautions .error-line', { hasText: 'stock on the wall: above 5 mm' })
    .waitFor();
  // The decision keeps its words, but no tick stands beside a limit that is passed.
  expect(await page.locator('machine-page .decision svg').count()).toBe(0);
  await step(page, 'B9', 'less');
  expect(await value(page, 'B9')).toBe('6.4');
  await page.getByRole('button', { name: 'Values as received' }).tap();
  await page.locator('machine-page .decision.yes svg').waitFor();
});

test('nothing moves under the thumb when a limit is passed', async () => {
  for (const size of SIZES) {
    const page = await atMachine(size);
    const places = async (): Promise<unknown> =>
      page.locator('machine-page').evaluate((element) =>
        [...(element.shadowRoot?.querySelectorAll('.step, .bar button') ?? [])].map((each) => {
          const { x, y } = each.getBoundingClientRect();
          return [Math.round(x), Math.round(y)];
        }),
      );
    const before = await places();
    for (let k = 0; k < 7; k += 1) await step(page, 'B11', 'more');
    await field(page, 'B11').locator('.message', { hasText: 'highest value' }).waitFor();
    expect(await places()).toEqual(before);
    await desks.close();
  }
});

test('F1a the keypad types numbers, units, fractions and signs without the system keyboard', async () => {
  const page = await atMachine();
  const input = page.locator('[data-field=B9]');
  await input.tap();
  expect(await input.getAttribute('inputmode')).toBe('none');
  await press(page, '1', 'a/b, fraction bar', '8', 'in, inches', 'take it and go to the next field');
  expect(await value(page, 'B9')).toBe('1/8');
  // The next field is open, its whole value selected.
  await press(page, '2', '9', '5', DONE);
  expect(await value(page, 'B11')).toBe('295');
  expect(await page.locator('on-screen-keypad').count()).toBe(0);
  await page.locator('[data-field=B12]').tap();
  await press(page, '9', '×10n, exponent of ten', 'change the sign', '2', DONE);
  expect(await value(page, 'B12')).toBe('9E-2');
  await page.locator('[data-field=B12]').tap();
  await press(page, '7', 'Leave it: the value stays as it was');
  expect(await value(page, 'B12')).toBe('9E-2');
  await page.getByRole('button', { name: 'Back to the desk' }).tap();
  await shows(page, 'B11', '295 m/min');
});

test('a value set at the machine says who set it, when, and what the desk had; the desk shows it, and undo takes the mark away', async () => {
  const page = await atMachine(SIZES[0], []);
  await step(page, 'B11', 'more');
  const asked = page.locator('machine-ask dialog');
  await asked.getByLabel('Name or initials').fill('Mara');
  await asked.getByRole('button', { name: 'This is me' }).tap();
  expect(await value(page, 'B11')).toBe('270');
  const mark = field(page, 'B11').locator('.set');
  expect((await mark.innerText()).replaceAll(/\s+/g, ' ')).toMatch(/^✎ Mara \d\d:\d\d · desk 260 m\/min$/);
  await step(page, 'B11', 'more');
  expect(await mark.innerText()).toContain('desk 260');
  // Known now: nobody asks again, also after the window was loaded anew.
  await page.locator('machine-page header p', { hasText: /saved \d/ }).waitFor();
  await page.reload();
  await step(page, 'B11', 'less');
  expect(await mark.innerText()).toContain('Mara');
  await page.getByRole('button', { name: 'Back to the desk' }).tap();
  await goTo(page, 'B11');
  await page
    .locator('machine-mark p', { hasText: 'set at the machine by Mara' })
    .waitFor({ state: 'attached' });
  await page.getByRole('button', { name: 'At the machine' }).tap();
  await step(page, 'B11', 'less');
  expect(await value(page, 'B11')).toBe('260');
  expect(await mark.count()).toBe(0);
});

test('the cautions that apply are always in sight, those of the material first', async () => {
  const page = await atMachine();
  const usual = page.locator('machine-page .usual');
  const calm = await usual.innerText();
  for (const words of ['guards closed', 'Never above the speed marked', 'above the part', 'qualified person'])
    expect(calm).toContain(words);
  expect(calm).not.toContain('Titanium');
  await page.getByRole('button', { name: 'Back to the desk' }).tap();
  await enter(page, 'D2', 'Ti-6Al-4V');
  await page.getByRole('button', { name: 'At the machine' }).tap();
  expect(await usual.innerText()).toMatch(/^▲ Titanium chips burn/);
  expect(await usual.isVisible()).toBe(true);
});

test('a device can be set so that only the values for the machine are changed there, and set back', async () => {
  const page = await atMachine();
  await page.getByRole('button', { name: 'Back to the desk' }).tap();
  const toggle = async (words: string): Promise<void> => {
    await page.getByRole('button', { name: 'Notebook', exact: true }).tap();
    await page.getByRole('button', { name: words }).tap();
  };
  await toggle('On this device change values for the machine only');
  await enter(page, 'B6', '63 mm');
  await page.getByText('On this device only the values for the machine can be changed').first().waitFor();
  await page.keyboard.press('Escape');
  await page.reload();
  await result(page, 'B17', '1655 1/min');
  await step(page, 'B11', 'more');
  await result(page, 'B17', '1719 1/min');
  await page.getByRole('button', { name: 'Back to the desk' }).tap();
  await shows(page, 'B6', '50 mm');
  await toggle('Let everything be changed on this device');
  await enter(page, 'B6', '63 mm');
  await shows(page, 'B6', '63 mm');
});

test('what can not be read is refused with words and the value stays', async () => {
  const page = await atMachine();
  await page.locator('[data-field=B11]').tap();
  await page.keyboard.type('20 min');
  await page.keyboard.press('Enter');
  await page
    .locator('machine-page [role=alert], machine-page .message', { hasText: 'not a time' })
    .first()
    .waitFor();
  await page.keyboard.press('Escape');
  expect(await value(page, 'B11')).toBe('260');
  await page.locator('[data-field=B11]').tap();
  await press(page, 'clear the field', DONE);
  expect(await value(page, 'B11')).toBe('260');
});

test('what was refused stays in its field, with the words why, until it is put right or dropped', async () => {
  const page = await atMachine();
  await page.locator('[data-field=B11]').tap();
  await page.keyboard.type('20 min');
  await page.locator('[data-field=B9]').tap();
  expect(await value(page, 'B11')).toBe('20 min');
  await field(page, 'B11').locator('.message', { hasText: 'not a time' }).waitFor();
  await page.locator('machine-page').getByRole('button', { name: 'Back to the desk' }).tap();
  expect(await value(page, 'B11')).toBe('20 min');
  await page.locator('[data-field=B11]').press('Escape');
  expect(await value(page, 'B11')).toBe('260');

  // Another tab takes the notebook over while something is typed.
  await page.locator('[data-field=B11]').tap();
  await page.keyboard.type('240');
  await losesNotebook(page);
  await page.locator('.band', { hasText: 'read only' }).waitFor();
  await page.keyboard.press('Enter');
  await field(page, 'B11').locator('.message', { hasText: 'Not taken: another tab' }).waitFor();
  expect(await value(page, 'B11')).toBe('240');
  await page.getByRole('button', { name: 'Take over' }).tap();
  await page.locator('.band', { hasText: 'read only' }).waitFor({ state: 'detached' });
  await page.locator('[data-field=B11]').press('Enter');
  await page.locator('.set').waitFor();
  expect(await value(page, 'B11')).toBe('240');
  expect(desks.current.troubles).toEqual([]);
});

test('the keypad works from the keys alone, and the next field takes what was typed before', async () => {
  const page = await atMachine();
  await page.locator('[data-field=B9]').focus();
  const pad = page.locator('on-screen-keypad');
  for (const name of ['clear the field', '2', 'decimal point', '2']) {
    await pad.getByRole('button', { name, exact: true }).focus();
    await page.keyboard.press('Enter');
  }
  await page.locator('[data-field=B11]').focus();
  expect(await value(page, 'B9')).toBe('2.2');
});

test('the screen is kept on where the device can, and the button says which it is', async () => {
  const page = await atMachine();
  const button = page.getByRole('button', { name: /screen/i });
  expect(await button.innerText()).toBe('Keep screen on');
  await button.tap();
  await page.getByRole('button', { name: /Screen stays on ✓|device refuses/ }).waitFor();
  const none = await page.context().newPage();
  await none.addInitScript(() => Object.defineProperty(navigator, 'wakeLock', { value: undefined }));
  await none.goto(page.url());
  await none.getByRole('button', { name: 'At the machine' }).tap();
  expect(await none.getByRole('button', { name: 'Screen may sleep' }).isDisabled()).toBe(true);
});

test('every target is 64 px and every field value 32 px at least, with nothing wider than the screen', async () => {
  for (const size of SIZES) {
    const page = await atMachine(size);
    await page.locator('[data-field=B9]').tap();
    const small = await page.evaluate(() => {
      const host = document
        .querySelector('swarf-book')
        ?.shadowRoot?.querySelector('machine-page')?.shadowRoot;
      const pad = host?.querySelector('on-screen-keypad')?.shadowRoot;
      const buttons = [
        ...(host?.querySelectorAll('button') ?? []),
        ...(pad?.querySelectorAll('button') ?? []),
      ];
      return buttons
        .map((each) => ({
          box: each.getBoundingClientRect(),
          name: each.ariaLabel ?? each.textContent.trim(),
        }))
        .filter(({ box }) => box.width < 63.5 || box.height < 63.5)
        .map(({ box, name }) => `${name} ${box.width} x ${box.height}`);
    });
    expect(small).toEqual([]);
    const sizes = await page
      .locator('machine-page [data-field]')
      .evaluateAll((all) => all.map((each) => parseFloat(getComputedStyle(each).fontSize)));
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(32);
    const width = await page
      .locator('machine-page')
      .evaluate((element) => element.shadowRoot?.querySelector('main')?.scrollWidth ?? 0);
    expect(width).toBeLessThanOrEqual(size.width);
    await desks.close();
  }
});

test('a reload at the machine comes back there and still knows the values as received', async () => {
  const page = await atMachine();
  await step(page, 'B11', 'more');
  await page.locator('machine-page header p', { hasText: /saved \d/ }).waitFor();
  await page.reload();
  await result(page, 'B17', '1719 1/min');
  await page.getByRole('button', { name: 'Values as received' }).tap();
  await result(page, 'B17', '1655 1/min');
});

test('undo at the machine never reaches what was done at the desk before', async () => {
  const { page } = await desks.open();
  await page.evaluate(() => localStorage.setItem('who', '["JK"]'));
  await newNotebook(page);
  await enter(page, 'A1', 'speed');
  await enter(page, 'B1', '200 m/min');
  await page.getByRole('button', { name: 'At the machine' }).click();
  await page.locator('machine-page .nothing', { hasText: 'changed at the machine' }).waitFor();
  await page.getByRole('button', { name: 'Back to the desk' }).click();
  await goTo(page, 'B1');
  await page.locator('machine-mark select').selectOption('changed');
  await page.getByRole('button', { name: 'At the machine' }).click();
  expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
  await page.locator('[data-field=B1]').focus();
  await page.keyboard.press('ArrowUp');
  expect(await value(page, 'B1')).toBe('210');
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await value(page, 'B1')).toBe('200');
  expect(await page.getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
});
