/** Trial, review and hand-over in the menu. */

import { isMachineOnly, toggleMachineOnly } from './machine-only.ts';
import { openLeaf } from './open-leaf.ts';
import type { ProgramCommand } from './program-command.ts';

export const TRIAL_COMMANDS: readonly ProgramCommand[] = [
  { group: 'Notebook', words: 'Plan a trial…', run: (_, from) => openLeaf(from, 'trial-plan') },
  { group: 'Notebook', words: 'Trial record…', run: (_, from) => openLeaf(from, 'trial-record') },
  { group: 'Notebook', words: 'What the trial tells…', run: (_, from) => openLeaf(from, 'trial-reading') },
  {
    group: 'Notebook',
    words: 'Recordings of machine and instruments…',
    run: (_, from) => openLeaf(from, 'recordings'),
  },
  {
    group: 'Notebook',
    words: 'Review formula by formula',
    run(session, from) {
      session.showMargin('review');
      from.dispatchEvent(new CustomEvent('open-margin', { bubbles: true, composed: true }));
    },
  },
  {
    group: 'File',
    words: 'Hand over: report, link, QR code…',
    run: (_, from) => openLeaf(from, 'hand-over'),
  },
  { group: 'File', words: 'Compare with a received notebook…', run: (_, from) => openLeaf(from, 'compare') },
  {
    group: 'Notebook',
    words: (session) =>
      isMachineOnly(session)
        ? 'Let everything be changed on this device'
        : 'On this device change values for the machine only',
    run: toggleMachineOnly,
  },
];
