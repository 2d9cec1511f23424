/** Ways of a notebook to other people: report, link; and what was handed over, so that its return can be merged. */

import { writeLink, writeNotebook, writeReport } from '../exchange/index.ts';
import { partsOf } from '../document/index.ts';
import type { Refusal } from '../document/index.ts';
import { packed } from '../storage/index.ts';
import { resultsFor } from './export-results.ts';
import { fileName } from './notebook-doors.ts';
import type { Session } from './session.ts';
import { USUAL_CAUTIONS } from './usual-cautions.ts';

/** Remembers the state both sides have now. */
export function rememberHandedOver({ notebook, world }: Session): void {
  void world.handed.remember(notebook.id, { at: world.clock.now(), text: writeNotebook(notebook) });
}

export const reportName = ({ notebook }: Session): string => `${fileName(notebook.title)}.html`;

/** The report as one HTML text. */
export async function reportOf(session: Session): Promise<string> {
  const { reportFigures, reportWorkings } = await import('./report-pictures.ts');
  const [figures, workings] = await Promise.all([reportFigures(session), reportWorkings(session)]);
  const findings = await trialFindings(session);
  return writeReport({
    notebook: session.notebook,
    findings,
    results: resultsFor(session),
    workings,
    figures,
    usualCautions: USUAL_CAUTIONS,
    program: `Swarfbook ${session.world.version}`,
    made: new Date(session.world.clock.now()).toISOString().slice(0, 16).replace('T', ' ') + ' UTC',
  });
}

/** What the trials tell, by trial id. */
async function trialFindings({ notebook }: Session): Promise<ReadonlyMap<string, readonly string[]>> {
  const trials = partsOf(notebook, 'trials');
  if (trials.length === 0) return new Map();
  const { findingsOf, readTrial } = await import('../trial/index.ts');
  const { currency } = notebook;
  return new Map(trials.map((trial) => [trial.id, findingsOf(readTrial(trial, { currency }))]));
}

/** The link with the notebook in it, or why there is none. */
export const linkOf = ({ notebook }: Session): Promise<string | Refusal> =>
  writeLink(location.origin + location.pathname, notebook, packed);
