/** Kills in ten profiles, a thousand unless SWARFBOOK_KILLS says how many; SWARFBOOK_SEED goes on with profiles after that one. Run with npm run soak. */

import { afterAll, beforeAll, expect, test } from 'vitest';
import { serve, type Serving } from '../../src/serve.mjs';
import { DIST } from './desk.ts';
import { killAgainAndAgain } from './kills.ts';

let server: Serving | undefined;
beforeAll(async () => {
  server = await serve({ folder: DIST, host: 'localhost' });
});
afterAll(() => server?.close());

const PROFILES = 10;
const KILLS = Math.ceil(Number(process.env['SWARFBOOK_KILLS'] ?? '1000') / PROFILES);
const BEFORE = Number(process.env['SWARFBOOK_SEED'] ?? '0');

for (let seed = BEFORE + 1; seed <= BEFORE + PROFILES; seed += 1)
  test(`1 profile ${seed}: after each of ${KILLS} kills every edit that the page had called saved is there`, async () => {
    const toll = await killAgainAndAgain(`http://localhost:${server?.port}/`, KILLS, seed);
    console.info(JSON.stringify(toll));
    expect(toll.kills).toBe(KILLS);
    expect(toll.confirmed).toBeGreaterThan(KILLS / 2);
  });
