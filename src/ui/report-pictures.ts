/** Figures and typeset formulas as text for a page without styles of ours: what the rules say is written into each element. */

import type { ReportFigure, ReportWorking } from '../exchange/index.ts';
import { labelOf } from '../document/index.ts';
import { addressWords } from './cell-links.ts';
import { FIGURE_RULES, FILE_VARIABLES } from './figures/figure.styles.ts';
import { prepareFigure, shownFigure } from './figures/shown-figure.ts';
import { markedResults } from './print/result-workings.ts';
import type { Session } from './session.ts';
import { workingOf } from './working.ts';

const WIDTH = 720;
const LOOKS = [
  'fill',
  'fill-opacity',
  'stroke',
  'stroke-width',
  'stroke-dasharray',
  'stroke-linejoin',
  'stroke-opacity',
  'paint-order',
  'font-family',
  'font-size',
  'font-style',
  'font-weight',
  'text-anchor',
] as const;

/** The picture with its looks as attributes. It is laid out of sight for a moment, because only a browser knows which rule wins. */
export function withLooks(picture: SVGElement): string {
  const host = document.createElement('div');
  const root = host.attachShadow({ mode: 'open' });
  const rules = new CSSStyleSheet();
  rules.replaceSync(
    `:host { position: fixed; inset-inline-start: -9999px; } ${FILE_VARIABLES}${FIGURE_RULES}`,
  );
  root.adoptedStyleSheets = [rules];
  root.append(picture);
  document.body.append(host);
  try {
    for (const element of picture.querySelectorAll('*')) {
      const looks = getComputedStyle(element);
      for (const name of LOOKS) {
        const value = looks.getPropertyValue(name);
        if (value !== '' && value !== 'normal') element.setAttribute(name, value.replaceAll('"', "'"));
      }
    }
    return new XMLSerializer().serializeToString(picture);
  } finally {
    host.remove();
  }
}

/** The notebook's figures; one that can not be drawn now is left out. */
export async function reportFigures(session: Session): Promise<readonly ReportFigure[]> {
  const figures = session.notebook.parts?.figures ?? [];
  await Promise.all(figures.map(({ content }) => prepareFigure(content.type)));
  return figures.flatMap((figure): ReportFigure[] => {
    const { picture, table } = shownFigure(session, figure, { width: WIDTH, id: `report-${figure.id}` });
    if (!picture) return [];
    const behind = table && { table: { headers: table.head, rows: table.rows } };
    return [{ title: figure.title, svg: withLooks(picture), ...behind }];
  });
}

/** Letters of an equation beyond which no page is wide enough; its formula stands in the list of formulas. */
const LONGEST = 110;
const isReadable = (markup: string): boolean => markup.replaceAll(/<[^>]*>/g, '').length <= LONGEST;

/** Workings of the results marked to be shown. */
export async function reportWorkings(session: Session): Promise<readonly ReportWorking[]> {
  const workings = markedResults(session).map(
    async ({ address, worksheet, cell }): Promise<ReportWorking> => {
      const explanation = await session.explain(address);
      const found = workingOf(session, { cell, explanation });
      const keys = [...new Set((found?.definitions ?? []).flatMap(({ sources }) => sources))];
      const label = labelOf(worksheet, address.row, address.column);
      return {
        title: [worksheet.title, addressWords(session, address, true), label]
          .filter((text) => text !== '')
          .join(', '),
        markup: [found?.equation, found?.substituted].flatMap((text) =>
          text !== undefined && isReadable(text) ? [text] : [],
        ),
        sources: keys.map((key) => session.catalogue?.sources.get(key) ?? key),
      };
    },
  );
  return Promise.all(workings);
}
