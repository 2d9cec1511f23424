/** Every formula of a notebook rewritten so that it still means the same cells and names after something moved, was renamed or deleted. */

import { DELETED_REFERENCE, rewriteReferences } from '../expression/index.ts';
import type { CellNode, NameNode, RangeNode, Reference } from '../expression/index.ts';
import { addressOf, blockOf, nameTo, referencesIn, referenceTo } from './formula-references.ts';
import { findWorksheet, forEachCell, withCells, worksheetOf, worksheetTitled } from './cells.ts';
import type { CellWrite } from './cells.ts';
import { followedParts } from './follow-parts.ts';
import { LIMITS } from './notebook.ts';
import type { Block, Cell, Notebook, Worksheet } from './notebook.ts';
import type { Parts } from './parts.ts';
import { recordingColumn, recordingTitled } from './recordings.ts';
import type { Refusal } from './refusal.ts';
import { namesOn, resolveName } from './resolve-name.ts';
import { rewrittenCell } from './tidy-cell.ts';

export interface PlacedBlock {
  /** Worksheet id. */
  readonly worksheet: string;
  readonly block: Block;
}

export interface PlacedName {
  /** Worksheet id. */
  readonly worksheet: string;
  readonly name: string;
}

/** Where blocks and names of the state before are in the state after; undefined means gone. What is left out stays where it was. */
export interface Whereabouts {
  readonly block?: (worksheet: string, block: Block) => PlacedBlock | undefined;
  readonly name?: (worksheet: string, name: string) => PlacedName | undefined;
  /** What a column of a recording is called afterwards. */
  readonly recording?: (title: string, column: string) => { readonly title: string; readonly column: string };
  /** On which worksheet a cell of the state after stood before; its own where left out. */
  readonly home?: (worksheet: string, row: number, column: number) => string;
}

type Rewritten = Reference | typeof DELETED_REFERENCE | undefined;

const isSameBlock = (a: Block, b: Block): boolean =>
  a.row === b.row && a.column === b.column && a.rows === b.rows && a.columns === b.columns;

class Follower {
  constructor(
    private readonly before: Notebook,
    private readonly after: Notebook,
    private readonly whereabouts: Whereabouts,
  ) {}

  /** The formula's text for its new home; a refusal where a range would pass a limit. */
  content(cell: Cell, homeBefore: string, homeAfter: string): string | Refusal {
    const references = referencesIn(cell);
    if (references.length === 0) return cell.content;
    let refusal: Refusal | undefined;
    const content = rewriteReferences(cell.content, references, (node) => {
      const by =
        node.type === 'name'
          ? this.name(node, homeBefore, homeAfter)
          : this.reference(node, homeBefore, homeAfter);
      if (typeof by !== 'object' || !('message' in by)) return by;
      refusal = by;
      return undefined;
    });
    if (refusal) return refusal;
    if (content.length > LIMITS.contentLength) {
      return { message: `a formula would be longer than ${LIMITS.contentLength} characters` };
    }
    return content;
  }

  private worksheetBefore(title: string | undefined, home: string): Worksheet | undefined {
    return title === undefined ? findWorksheet(this.before, home) : worksheetTitled(this.before, title);
  }

  private reference(node: CellNode | RangeNode, homeBefore: string, homeAfter: string): Rewritten | Refusal {
    const worksheet = this.worksheetBefore(node.worksheet, homeBefore);
    if (!worksheet) return undefined;
    const was = blockOf(node);
    const placed = this.whereabouts.block
      ? this.whereabouts.block(worksheet.id, was)
      : { worksheet: worksheet.id, block: was };
    const target = placed && findWorksheet(this.after, placed.worksheet);
    if (!placed || !target) return DELETED_REFERENCE;
    const { block } = placed;
    const size = block.rows * block.columns;
    if (size > LIMITS.rangeCells && size > was.rows * was.columns) {
      return { message: `a range would grow to ${size} cells; ${LIMITS.rangeCells} is the most` };
    }
    if (block.row + block.rows > LIMITS.rows || block.column + block.columns > LIMITS.columns) {
      return { message: `a reference would reach beyond row ${LIMITS.rows} or column BL` };
    }
    const own = node.worksheet === undefined && target.id === homeAfter;
    const sameWords = node.worksheet === undefined ? own : node.worksheet === target.title;
    if (sameWords && isSameBlock(was, block)) return undefined;
    return referenceTo(node, block, own ? undefined : target.title);
  }

  private name(node: NameNode, homeBefore: string, homeAfter: string): Rewritten {
    const { name, worksheet: title } = node;
    const recorded = title !== undefined && recordingTitled(this.before, title);
    if (recorded && recordingColumn(recorded, name)) {
      const called = this.whereabouts.recording?.(title, name) ?? { title, column: name };
      const same = called.title === title && called.column === name;
      return same ? undefined : nameTo(node, called.column, called.title);
    }
    const worksheet =
      title === undefined
        ? resolveName(this.before, homeBefore, name)?.worksheet
        : worksheetTitled(this.before, title);
    if (!worksheet || !namesOn(worksheet).has(name)) {
      const renamed = worksheet && findWorksheet(this.after, worksheet.id);
      return renamed && renamed.title !== title ? nameTo(node, name, renamed.title) : undefined;
    }
    const placed = this.whereabouts.name
      ? this.whereabouts.name(worksheet.id, name)
      : { worksheet: worksheet.id, name };
    const target = placed && findWorksheet(this.after, placed.worksheet);
    if (!placed || !target) return DELETED_REFERENCE;
    if (title !== undefined) {
      return placed.name === name && target.title === title
        ? undefined
        : nameTo(node, placed.name, target.title);
    }
    const found = resolveName(this.after, homeAfter, placed.name)?.worksheet.id === target.id;
    if (found) return placed.name === name ? undefined : nameTo(node, placed.name, undefined);
    return nameTo(node, placed.name, target.title);
  }
}

/** Formulas that a variant holds, rewritten like those in cells; their places are still those of the state before. */
function withVariantContents(
  parts: Parts | undefined,
  follower: Follower,
  { block }: Whereabouts,
): Parts | undefined {
  if (!parts?.variants?.some(({ values }) => values.some(({ content }) => content.startsWith('='))))
    return parts;
  const variants = parts.variants.map((variant) => {
    const values = variant.values.map((value) => {
      const { worksheet, row, column } = value.place;
      if (!value.content.startsWith('=')) return value;
      const home = block?.(worksheet, { row, column, rows: 1, columns: 1 })?.worksheet ?? worksheet;
      const content = follower.content({ content: value.content }, worksheet, home);
      return typeof content === 'object' || content === value.content ? value : { ...value, content };
    });
    return values.every((value, index) => value === variant.values[index])
      ? variant
      : Object.freeze({ ...variant, values });
  });
  return { ...parts, variants };
}

/** A tick holds on where its formula was only written anew and means the same. */
function withTickContents(
  parts: Parts | undefined,
  rewritten: ReadonlyMap<string, { readonly from: string; readonly to: string }>,
): Parts | undefined {
  if (!parts?.reviews || rewritten.size === 0) return parts;
  const reviews = parts.reviews.map((tick) => {
    const { worksheet, row, column } = tick.place;
    const change = rewritten.get(`${worksheet} ${row} ${column}`);
    return change?.from === tick.content ? Object.freeze({ ...tick, content: change.to }) : tick;
  });
  return { ...parts, reviews: Object.freeze(reviews) };
}

/** The state after with its formulas rewritten; its cells still hold the formulas of the state before. */
export function followed(before: Notebook, after: Notebook, whereabouts: Whereabouts): Notebook | Refusal {
  const follower = new Follower(before, after, whereabouts);
  const worksheets: Worksheet[] = [];
  const rewritten = new Map<string, { readonly from: string; readonly to: string }>();
  for (const worksheet of after.worksheets) {
    const writes: CellWrite[] = [];
    let refusal: Refusal | undefined;
    forEachCell(worksheet, (cell, row, column) => {
      if (!cell.content.startsWith('=') || refusal) return;
      const home = whereabouts.home?.(worksheet.id, row, column) ?? worksheet.id;
      const content = follower.content(cell, home, worksheet.id);
      if (typeof content === 'object') {
        refusal = {
          message: `Not possible: in ${worksheet.title}, ${addressOf(row, column)}, ${content.message}.`,
        };
      } else if (content !== cell.content) {
        writes.push({ row, column, cell: rewrittenCell(cell, content) });
        rewritten.set(`${worksheet.id} ${row} ${column}`, { from: cell.content, to: content });
      }
    });
    if (refusal) return refusal;
    worksheets.push(withCells(worksheet, writes));
  }
  const known = new Set(worksheets.map(({ id }) => id));
  const { parts: _before, ...rest } = after;
  const carried = followedParts(withVariantContents(after.parts, follower, whereabouts), known, whereabouts);
  const parts = withTickContents(carried, rewritten);
  return { ...rest, worksheets, ...(parts && { parts }) };
}

/** One cell's formula as it must read on another worksheet, names and references meaning what they meant. */
export function carriedContent(
  before: Notebook,
  after: Notebook,
  cell: Cell,
  from: string,
  to: string,
  whereabouts: Whereabouts = {},
): string | Refusal {
  worksheetOf(before, from);
  return new Follower(before, after, whereabouts).content(cell, from, to);
}

/** The cell for another worksheet of the notebook: names that would mean something else there are qualified; references stay as written. */
export function carriedNames(before: Notebook, after: Notebook, cell: Cell, from: string, to: string): Cell {
  const content = rewriteReferences(cell.content, referencesIn(cell), (node) => {
    if (node.type !== 'name' || node.worksheet !== undefined) return undefined;
    const meant = resolveName(before, from, node.name)?.worksheet;
    const there = meant && findWorksheet(after, meant.id);
    if (!there || resolveName(after, to, node.name)?.worksheet.id === there.id) return undefined;
    return nameTo(node, node.name, there.title);
  });
  return rewrittenCell(cell, content);
}
