/** What a notebook holds beside its worksheets: lists of records, each with an id of its own in its list. Quantities are text as typed (F1). */

import type { Kept } from './kept.ts';
import type { BlockPlace, CellPlace } from './place.ts';
import type { Trial } from './trial.ts';

export interface Identified extends Kept {
  readonly id: string;
}

/** A named alternative: own contents where it differs from the notebook's given values. */
export interface Variant extends Identified {
  readonly title: string;
  /** Its contents stand in the cells now; the record with the id "base" keeps the base's. */
  readonly shown?: true;
  readonly note?: string;
  readonly values: readonly { readonly place: CellPlace; readonly content: string }[];
}

/** A row of the table of variants; `best` tells which direction is the better one for a result. */
export interface WatchedCell extends Identified {
  readonly place: CellPlace;
  readonly best?: 'largest' | 'smallest';
}

/** How a given value spreads about what its cell says (JCGM 101, 6.4). */
export type Distribution =
  /** Standard uncertainty; with its degrees of freedom where it was estimated from readings. */
  | { readonly type: 'normal'; readonly uncertainty: string; readonly degrees?: number }
  | { readonly type: 'uniform'; readonly halfWidth: string }
  | { readonly type: 'triangular'; readonly halfWidth: string }
  /** Drawn again from measured values. */
  | { readonly type: 'sample'; readonly from: BlockPlace };

export interface Spread extends Identified {
  readonly place: CellPlace;
  readonly distribution: Distribution;
}

/** The values a given runs through. */
export type SweptRange =
  | {
      readonly type: 'linear' | 'logarithmic';
      readonly from: string;
      readonly to: string;
      readonly count: number;
    }
  | { readonly type: 'list'; readonly values: readonly string[] };

/** A question that was asked of the notebook, so that it can be asked again. */
export type Study =
  | {
      readonly type: 'solve';
      readonly result: CellPlace;
      readonly wanted: string;
      readonly given: CellPlace;
      readonly low: string;
      readonly high: string;
    }
  | {
      readonly type: 'search';
      readonly result: CellPlace;
      readonly aim: 'largest' | 'smallest';
      /** One to four. */
      readonly givens: readonly { readonly place: CellPlace; readonly low: string; readonly high: string }[];
      readonly constraints: readonly {
        readonly place: CellPlace;
        readonly relation: 'at most' | 'at least';
        readonly limit: string;
      }[];
    }
  | {
      readonly type: 'sweep';
      /** One or two. */
      readonly givens: readonly { readonly place: CellPlace; readonly range: SweptRange }[];
      readonly results: readonly CellPlace[];
    }
  | {
      readonly type: 'spread';
      readonly results: readonly CellPlace[];
      readonly samples: number;
      readonly seed: number;
    };

export interface StudySetting extends Identified {
  readonly title: string;
  readonly study: Study;
}

export interface PlotSeries {
  readonly mark: 'points' | 'line' | 'bars' | 'band';
  readonly y: BlockPlace;
  /** Upper edge of a band. */
  readonly to?: BlockPlace;
  /** Own places along x, such as those of an operating point; absent: the plot's. */
  readonly x?: BlockPlace;
  readonly label?: string;
}

export type FigureContent =
  | {
      readonly type: 'plot';
      /** Absent: counted 1, 2, 3. */
      readonly x?: BlockPlace;
      readonly series: readonly PlotSeries[];
      /** Levels drawn across, such as a wear limit. */
      readonly levels?: readonly { readonly place: CellPlace; readonly words?: string }[];
      readonly logarithmicX?: true;
      readonly logarithmicY?: true;
    }
  /** A sketch to scale, drawn from cells by the parameters of its kind. */
  | {
      readonly type: 'sketch';
      readonly sketch: string;
      readonly values: readonly { readonly parameter: string; readonly place: CellPlace }[];
    };

export interface Figure extends Identified {
  readonly title: string;
  readonly content: FigureContent;
}

/** A log of a machine or an instrument: named columns outside the cells, usable in formulas as title.column. */
export interface Recording extends Identified {
  /** A name by the rules of names. */
  readonly title: string;
  readonly columns: readonly {
    readonly name: string;
    readonly unit?: string;
    /** In that unit; null where a reading is missing. */
    readonly values: readonly (number | null)[];
  }[];
  readonly source?: string;
}

export interface Photograph extends Identified {
  readonly type: 'image/jpeg' | 'image/png' | 'image/webp';
  /** Base64. */
  readonly data: string;
  readonly width: number;
  readonly height: number;
  readonly words: string;
  /** ISO 8601. */
  readonly at?: string;
}

/** A formula somebody has looked through: falls when formula or unit change. */
export interface ReviewTick extends Identified {
  readonly place: CellPlace;
  /** The formula as it was ticked. */
  readonly content: string;
  /** Unit of its result as it was ticked. */
  readonly unit: string;
  readonly initials: string;
  /** ISO 8601. */
  readonly at: string;
}

export interface PartLists {
  readonly variants: readonly Variant[];
  readonly watched: readonly WatchedCell[];
  readonly spreads: readonly Spread[];
  readonly studies: readonly StudySetting[];
  readonly figures: readonly Figure[];
  readonly recordings: readonly Recording[];
  readonly photographs: readonly Photograph[];
  readonly trials: readonly Trial[];
  readonly reviews: readonly ReviewTick[];
}

export type PartName = keyof PartLists;
export type PartOf<Name extends PartName> = PartLists[Name][number];
export type AnyPart = PartOf<PartName>;

/** Empty lists are left out, and the whole where all are. Lists that this program does not know are kept. */
export type Parts = Partial<PartLists> & Kept;

export const PART_NAMES = Object.freeze([
  'variants',
  'watched',
  'spreads',
  'studies',
  'figures',
  'recordings',
  'photographs',
  'trials',
  'reviews',
] as const satisfies readonly PartName[]);

export const PART_LIMITS = Object.freeze({
  records: 1000,
  /** A tick for every formula there can be. */
  reviews: 50_000,
  recordingRows: 200_000,
  recordingColumns: 64,
  photographs: 40,
  /** Base64 characters of one photograph. */
  photographText: 170_000,
  /** Characters of all lists together in a file. */
  text: 24_000_000,
});

/** How many records a list takes. */
export function mostRecords(part: PartName): number {
  if (part === 'photographs') return PART_LIMITS.photographs;
  return part === 'reviews' ? PART_LIMITS.reviews : PART_LIMITS.records;
}
