/** Where the notebook is kept, in the words of the head line. */

import type { Session } from './session.ts';

/** Made once: making it takes longer than all the rest of the head line. */
const CLOCK = new Intl.DateTimeFormat([], { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
const time = (at: number): string => CLOCK.format(at);

const DAY = 86_400_000;

const age = (at: number, now: number): string => {
  const days = Math.floor((now - at) / DAY);
  return days < 1 ? `at ${time(at)}` : days === 1 ? 'a day old' : `${days} days old`;
};

/** "saved 10:42 on this device · file copy 2 days old · ready without network". */
export function saveWords({ saved, copiedAt, world }: Session): string {
  const { readiness, risk: signs } = world.installation;
  const risk = signs === undefined ? '' : ': this browser may not keep this one';
  const parts = [
    saved.type === 'saved'
      ? `saved ${time(saved.at)} on this device`
      : saved.type === 'saving'
        ? 'saving…'
        : 'NOT saved',
    copiedAt === undefined ? `no file copy yet${risk}` : `file copy ${age(copiedAt, world.clock.now())}`,
  ];
  if (readiness === 'ready') parts.push('ready without network');
  return parts.join(' · ');
}
