/** A thousand kills in ten profiles: hours of a careless user's life in about an hour; run with npm run soak. */

import { afterAll, beforeAll, expect, test } from 'vitest';
import { serve, type Serving } from '../../src/serve.mjs';
import { DIST } from './desk.ts';
import { killAgainAndAgain } from './kills.ts';

let server: Serving | undefined;
beforeAll(async () => {
  server = await serve({ folder: DIST, host: 'localhost' });
});
afterAll(() => server?.close());

const KILLS = 100;

for (let seed = 1; seed <= 10; seed += 1)
  test(`1 profile ${seed}: after each of ${KILLS} kills every edit that the page had called saved is there`, async () => {
    const toll = await killAgainAndAgain(`http://localhost:${server?.port}/`, KILLS, seed);
    console.info(JSON.stringify(toll));
    expect(toll.kills).toBe(KILLS);
    expect(toll.confirmed).toBeGreaterThan(KILLS);
  });
