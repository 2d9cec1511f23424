/** Dependency order of formula cells and the cycles among them, found on our own graph before anything is computed. */

import { contains, isCell, isFilled } from './cells.ts';
import type { Cells, CellState, RangeState } from './cells.ts';

export interface DependencyOrder {
  /** Every cell after its precedents; the cells of a cycle together. */
  readonly order: readonly CellState[];
  /** For each cell of a cycle a shortest way round, the first cell not repeated. */
  readonly cycles: ReadonlyMap<CellState, readonly CellState[]>;
}

type Vertex = CellState | RangeState;

/** What a vertex needs first: blocks stand between a formula and the cells in them, so that shared blocks are walked once. */
function* needs(cells: Cells, vertex: Vertex): Generator<Vertex> {
  if (isCell(vertex)) {
    if (vertex.origin) yield vertex.origin;
    if (!vertex.formula) return;
    yield* vertex.formula.cells;
    yield* vertex.formula.ranges;
  } else if (!vertex.recorded) {
    for (const cell of cells.within(vertex)) if (cell.formula || cell.origin) yield cell;
  }
}

/** A shortest cycle through a vertex, within its component. */
function cycleThrough(cells: Cells, start: CellState, component: ReadonlySet<Vertex>): CellState[] {
  const cameFrom = new Map<Vertex, Vertex>();
  const queue: Vertex[] = [start];
  for (const vertex of queue) {
    for (const need of needs(cells, vertex)) {
      if (need === start) {
        const path: Vertex[] = [];
        for (let step: Vertex | undefined = vertex; step; step = cameFrom.get(step)) path.unshift(step);
        return path.filter(isCell);
      }
      if (!component.has(need) || cameFrom.has(need)) continue;
      cameFrom.set(need, vertex);
      queue.push(need);
    }
  }
  return [start];
}

interface Visit {
  readonly vertex: Vertex;
  readonly index: number;
  low: number;
  readonly remaining: Iterator<Vertex>;
  loops: boolean;
}

let orderings = 0;

/** True where all single cells that a formula needs are placed: the usual case, as pages are written downwards. */
function isNext({ formula, origin }: CellState, among: ReadonlySet<CellState>, run: number): boolean {
  if (origin || (formula && formula.ranges.length > 0)) return false;
  return formula?.cells.every((cell) => cell.placedIn === run || !among.has(cell)) ?? true;
}

/** Tarjan's components without recursion (a chain of thousands of cells is usual); cells outside `among` are taken as settled. */
export function dependencyOrder(cells: Cells, among: ReadonlySet<CellState>): DependencyOrder {
  const run = ++orderings;
  const order: CellState[] = [];
  const cycles = new Map<CellState, readonly CellState[]>();
  const indexOf = new Map<Vertex, number>();
  const open = new Set<Vertex>();
  const openStack: Vertex[] = [];

  const place = (cell: CellState): void => {
    cell.placedIn = run;
    order.push(cell);
  };

  const enter = (vertex: Vertex): Visit => {
    const index = indexOf.size;
    indexOf.set(vertex, index);
    open.add(vertex);
    openStack.push(vertex);
    return { vertex, index, low: index, remaining: needs(cells, vertex), loops: false };
  };

  const close = (visit: Visit): void => {
    const component: Vertex[] = [];
    for (;;) {
      const vertex = openStack.pop();
      if (!vertex) break;
      open.delete(vertex);
      component.push(vertex);
      if (vertex === visit.vertex) break;
    }
    const members = component.filter(isCell);
    for (const cell of members) place(cell);
    if (component.length === 1 && !visit.loops) return;
    const inside = new Set(component);
    for (const cell of members) {
      // Large cycles share one path: a path of its own for each cell would cost the square of their number.
      const shared = members.length > 64 && members[0] ? cycles.get(members[0]) : undefined;
      cycles.set(cell, shared ?? cycleThrough(cells, cell, inside));
    }
  };

  for (const root of among) {
    if (root.placedIn === run) continue;
    if (isNext(root, among, run)) {
      place(root);
      continue;
    }
    const visits: Visit[] = [enter(root)];
    for (let visit = visits.at(-1); visit; visit = visits.at(-1)) {
      const { done, value: need } = visit.remaining.next();
      if (done) {
        visits.pop();
        if (visit.low === visit.index) close(visit);
        const parent = visits.at(-1);
        if (parent) parent.low = Math.min(parent.low, visit.low);
        continue;
      }
      if (isCell(need) && (need.placedIn === run || !among.has(need))) continue;
      if (need === visit.vertex) visit.loops = true;
      const seen = indexOf.get(need);
      if (seen === undefined) visits.push(enter(need));
      else if (open.has(need)) visit.low = Math.min(visit.low, seen);
    }
  }
  return { order, cycles };
}

/** The cells themselves and everything that depends on them, near or far. */
export function dependentsOf(cells: Cells, changed: Iterable<CellState>): Set<CellState> {
  const reached = new Set(changed);
  for (const cell of reached) {
    for (const user of cells.usersOf(cell)) reached.add(user);
    if (cell.items) for (const item of itemsOf(cells, cell)) reached.add(item);
  }
  return reached;
}

/** The cells that show the further values of a formula (F26). */
export function* itemsOf(cells: Cells, origin: CellState): Generator<CellState> {
  const rows = origin.items?.grid ?? [];
  for (let r = 0; r < rows.length; r++) {
    for (let c = 0; c < (rows[r]?.length ?? 0); c++) {
      const item = cells.find(origin.sheet, origin.row + r, origin.column + c);
      if (item && item.origin === origin && isFilled(item)) yield item;
    }
  }
}

/** True where computing the operands needs the cell, near or far. */
export function leadsTo(
  cells: Cells,
  operands: Iterable<CellState | RangeState>,
  target: CellState,
): boolean {
  const reached = new Set<Vertex>(operands);
  for (const vertex of reached) {
    if (vertex === target || (!isCell(vertex) && contains(vertex, target))) return true;
    for (const need of needs(cells, vertex)) reached.add(need);
  }
  return false;
}
