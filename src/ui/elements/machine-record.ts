/** The record of a trial on the machine-side page: its table comes when the notebook has one. */

import { html, nothing, type TemplateResult } from 'lit';
import { partsOf } from '../../document/index.ts';
import type { Session } from '../session.ts';

export const hasRecord = ({ notebook }: Session): boolean => partsOf(notebook, 'trials').length > 0;

export function machineRecord(session: Session): TemplateResult | typeof nothing {
  if (!hasRecord(session)) return nothing;
  void import('../views/trial-record.ts');
  return html`<section class="record"><trial-record .session=${session}></trial-record></section>`;
}
