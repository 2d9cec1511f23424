/** A figure being edited: texts as typed, back and forth to the record of the notebook. Knows no screen. */

import type { BlockPlace, CellPlace, Figure, Notebook, PlotSeries } from '../../document/index.ts';
import { blockText, findWorksheet } from '../../document/index.ts';
import { titleText } from '../../expression/index.ts';
import { written } from '../destinations.ts';
import { sketchOf } from './sketches.ts';

export interface SeriesDraft {
  readonly mark: PlotSeries['mark'];
  readonly label: string;
  readonly y: string;
  readonly to: string;
  readonly x: string;
}

export interface LevelDraft {
  readonly cell: string;
  readonly words: string;
}

export type FigureDraft = { readonly id: string; readonly title: string } & (
  | { readonly type: 'sketch'; readonly sketch: string; readonly cells: ReadonlyMap<string, string> }
  | {
      readonly type: 'plot';
      readonly x: string;
      readonly series: readonly SeriesDraft[];
      readonly levels: readonly LevelDraft[];
      readonly logarithmicX: boolean;
      readonly logarithmicY: boolean;
    }
);

export const EMPTY_SERIES: SeriesDraft = { mark: 'line', label: '', y: '', to: '', x: '' };

/** As it stands in formulas on a worksheet. */
function placed(notebook: Notebook, here: string, place: BlockPlace | CellPlace | undefined): string {
  if (!place) return '';
  const block =
    'block' in place ? place.block : { row: place.row, column: place.column, rows: 1, columns: 1 };
  const home = findWorksheet(notebook, place.worksheet);
  const where = place.worksheet === here || !home ? '' : `${titleText(home.title)}.`;
  return where + blockText(block);
}

/** The texts of a figure, its cells as they are written on the worksheet `here`. */
export function draftOf(notebook: Notebook, here: string, { id, title, content }: Figure): FigureDraft {
  if (content.type === 'sketch') {
    const cells = new Map<string, string>();
    for (const { parameter, place } of content.values) {
      const before = cells.get(parameter);
      const text = placed(notebook, here, place);
      cells.set(parameter, before === undefined ? text : `${before}; ${text}`);
    }
    return { id, title, type: 'sketch', sketch: content.sketch, cells };
  }
  const { x, series, levels = [], logarithmicX = false, logarithmicY = false } = content;
  return {
    id,
    title,
    type: 'plot',
    x: placed(notebook, here, x),
    series: series.map((each) => ({
      mark: each.mark,
      label: each.label ?? '',
      y: placed(notebook, here, each.y),
      to: placed(notebook, here, each.to),
      x: placed(notebook, here, each.x),
    })),
    levels: levels.map(({ place, words = '' }) => ({ cell: placed(notebook, here, place), words })),
    logarithmicX,
    logarithmicY,
  };
}

export interface DraftRefusal {
  readonly refused: string;
}

export const isDraftRefused = (answer: Figure | DraftRefusal): answer is DraftRefusal => 'refused' in answer;

class Unreadable extends Error {}

/** The record a draft stands for, or what can not be read in it. */
export function figureOf(notebook: Notebook, here: string, draft: FigureDraft): Figure | DraftRefusal {
  const block = (text: string, what: string): BlockPlace => {
    const found = written(notebook, here, text);
    if (!found) throw new Unreadable(`${what}: “${text}” is no cell, range or name of this notebook`);
    return { worksheet: found.worksheet, block: found.block };
  };
  const blockIfAny = (text: string, what: string): BlockPlace | undefined =>
    text.trim() === '' ? undefined : block(text, what);
  const cells = (text: string, what: string): CellPlace[] =>
    text
      .split(';')
      .map((each) => each.trim())
      .filter((each) => each !== '')
      .flatMap((each) => {
        const {
          worksheet,
          block: { row, column, rows, columns },
        } = block(each, what);
        return Array.from({ length: rows * columns }, (_, k) => ({
          worksheet,
          row: row + Math.floor(k / columns),
          column: column + (k % columns),
        }));
      });
  const { id } = draft;
  const title = draft.title.trim();
  try {
    if (draft.type === 'sketch') {
      const sketch = sketchOf(draft.sketch);
      const values = (sketch?.parameters ?? []).flatMap(({ key, words }) =>
        cells(draft.cells.get(key) ?? '', words).map((place) => ({ parameter: key, place })),
      );
      return {
        id,
        title: title || (sketch?.title ?? 'Sketch'),
        content: { type: 'sketch', sketch: draft.sketch, values },
      };
    }
    const x = blockIfAny(draft.x, 'along x');
    const series = draft.series.map((each, k): PlotSeries => {
      const what = each.label || `series ${k + 1}`;
      const to = blockIfAny(each.to, `${what}, upper edge`);
      const own = blockIfAny(each.x, `${what}, own x`);
      return {
        mark: each.mark,
        y: block(each.y, what),
        ...(to && { to }),
        ...(own && { x: own }),
        ...(each.label.trim() !== '' && { label: each.label.trim() }),
      };
    });
    const levels = draft.levels.flatMap(({ cell, words }) =>
      cells(cell, 'level')
        .slice(0, 1)
        .map((place) => ({ place, ...(words.trim() !== '' && { words: words.trim() }) })),
    );
    return {
      id,
      title: title || 'Plot',
      content: {
        type: 'plot',
        ...(x && { x }),
        series,
        ...(levels.length > 0 && { levels }),
        ...(draft.logarithmicX && { logarithmicX: true as const }),
        ...(draft.logarithmicY && { logarithmicY: true as const }),
      },
    };
  } catch (reason) {
    if (reason instanceof Unreadable) return { refused: reason.message };
    throw reason;
  }
}
