/** Look-ups in tables: the key's dimension fits its column, the result has the dimension of the column it comes from (F13b). */

import { asNumber, failure, isFailure, isGrid, valueOrder } from '../expression/index.ts';
import type {
  ArgumentType,
  Failure,
  GridType,
  Scalar,
  ScalarType,
  Value,
  ValueType,
} from '../expression/index.ts';
import { builtin, example } from './builtin-definition.ts';
import type { BuiltinDefinition } from './builtin-definition.ts';
import { choiceType } from './logical.ts';
import { anyList, anything, logical, optional, whole } from './parameter.ts';
import { NEUTRAL, PLAIN_NUMBER, gridOf, refused, shared, singles, sizeOf } from './type-rules.ts';

type Rows = readonly (readonly Scalar[])[];

/** An argument's type cut down to some of its columns. */
const withColumns = (arg: ArgumentType, columns: GridType['columns'], rows = 1): ArgumentType => ({
  ...arg,
  type: { type: 'grid', columns, rows },
});

/** Whether a key can be looked for there; a text, logical or blank key always can. */
const keyRefusal = (call: string, key: ArgumentType, where: ArgumentType): ValueType | undefined => {
  if (singles(key.type)[0]?.type !== 'number') return undefined;
  const type = shared(call, [key, where]);
  return type?.type === 'failed' ? type : undefined;
};

/** The type of one column, or of all together. */
function columnType(call: string, arg: ArgumentType, column: number | undefined): ScalarType {
  const columns = singles(arg.type);
  if (column !== undefined) {
    return columns[column - 1] ?? refused(`${call}: ${arg.text.trim()} has no column ${column}`, '#REF!');
  }
  const type = choiceType(call, [withColumns(arg, columns)]);
  return type.type === 'grid' ? type.columns[0]! : type;
}

const literal = (arg: ArgumentType | undefined): number | undefined => {
  const type = arg && singles(arg.type)[0];
  return type?.type === 'number' && type.literal !== undefined ? Math.trunc(type.literal) : undefined;
};

/** Where a sorted list has the last value not above the key (rising) or the last not below (falling); -1 if none. */
function sortedPlace(values: readonly Scalar[], key: Scalar, falling: boolean): number {
  let place = -1;
  for (const [i, value] of values.entries()) {
    if (value === null || isFailure(value) || typeof value !== typeof key) continue;
    const order = valueOrder(value, key);
    if (typeof order !== 'number') continue;
    if (falling ? order < 0 : order > 0) break;
    place = i;
  }
  return place;
}

const exactPlace = (values: readonly Scalar[], key: Scalar): number =>
  values.findIndex((value) => typeof value === typeof key && value !== null && valueOrder(value, key) === 0);

const notFound = (key: Scalar): Failure =>
  failure('#N/A', `${typeof key === 'string' ? `"${key.slice(0, 40)}"` : 'the value'} is not in the table`);

const single = (value: Value): Scalar => {
  if (isFailure(value) || !isGrid(value)) return value;
  return value.grid.length === 1 && value.grid[0]?.length === 1
    ? (value.grid[0][0] ?? null)
    : failure('#VALUE!', 'a range stands where one value is needed');
};

/** The key of a look-up; a blank one is 0. */
const keyOf = (value: Value): Scalar => single(value) ?? 0;

/** VLOOKUP and HLOOKUP share everything but the direction. */
function lookedUp(
  keys: readonly Scalar[],
  key: Scalar,
  sorted: boolean,
  result: (place: number) => Scalar,
): Scalar {
  if (isFailure(key)) return key;
  const place = sorted ? sortedPlace(keys, key, false) : exactPlace(keys, key);
  return place < 0 ? notFound(key) : (result(place) ?? 0);
}

function indexType(args: readonly ArgumentType[]): ValueType {
  const [table, row, column] = args;
  if (!table) return NEUTRAL;
  const columns = singles(table.type);
  const [rows] = sizeOf(table.type);
  const alone = args.length === 2 && columns.length > 1 && rows === 1 ? row : column;
  const chosenColumn = columns.length === 1 ? 1 : literal(alone);
  if (chosenColumn !== undefined && chosenColumn !== 0) {
    const type = columnType('INDEX', table, chosenColumn);
    return literal(row) === 0 && rows > 1 && alone === column ? gridOf(type, rows, 1) : type;
  }
  if (chosenColumn === 0 || (args.length === 2 && columns.length > 1 && rows > 1)) {
    const wholeRow = literal(row) !== 0;
    return { type: 'grid', columns, rows: wholeRow ? 1 : rows };
  }
  const type = columnType('INDEX', table, undefined);
  return literal(row) === 0 && rows > 1 ? gridOf(type, rows, 1) : type;
}

function indexed(rows: Rows, first: number | undefined, second: number | undefined): Value {
  const height = rows.length;
  const width = rows[0]?.length ?? 0;
  const oneLine = second === undefined && (height === 1 || width === 1);
  const row = oneLine && height === 1 ? 1 : (first ?? 0);
  const column = oneLine ? (height === 1 ? (first ?? 0) : 1) : (second ?? 0);
  if (row < 0 || column < 0 || row > height || column > width) {
    return failure('#REF!', `the table has ${height} rows and ${width} columns`);
  }
  const picked = row === 0 ? rows : [rows[row - 1]!];
  return { grid: column === 0 ? picked : picked.map((line) => [line[column - 1] ?? null]) };
}

function chooseAt(args: readonly (() => Value)[]): Value {
  const n = asNumber(single(args[0]?.() ?? null));
  if (typeof n !== 'number') return n;
  const place = Math.trunc(n);
  const branch = place >= 1 ? args[place] : undefined;
  return branch ? (branch() ?? 0) : failure('#VALUE!', `there is no choice ${place}`);
}

/** Cells of a range in the order of its rows. */
const flat = (rows: Rows): Scalar[] => rows.flat();

export const LOOKUP: readonly BuiltinDefinition[] = [
  builtin({
    name: 'CHOOSE',
    group: 'look-up',
    section: '6.14.3',
    summary: 'The value with this number among the choices',
    searchWords: ['choose', 'case', 'select', 'list'],
    takes: [whole('number')],
    rest: anything('value'),
    leastRest: 1,
    gives(args) {
      const place = literal(args[0]);
      const only = place === undefined ? undefined : args[place];
      return choiceType('CHOOSE', place !== 0 && only ? [only] : args.slice(1));
    },
    evaluateLazily: chooseAt,
    examples: [example('CHOOSE(2; "Apple"; "Orange")', '"Orange"', 'by hand')],
  }),
  builtin({
    name: 'VLOOKUP',
    group: 'look-up',
    section: '6.14.12',
    summary: 'Finds a key in the first column and gives the cell of another column in that row',
    searchWords: ['table', 'find', 'search', 'vertical'],
    takes: [anything('key'), anyList('table'), whole('column'), optional(logical('sorted'))],
    gives(args) {
      const [key, table, column] = args;
      if (!key || !table) return NEUTRAL;
      const refusal = keyRefusal('VLOOKUP', key, withColumns(table, singles(table.type).slice(0, 1)));
      return refusal ?? columnType('VLOOKUP', table, literal(column));
    },
    evaluate([key, { grid }, column, sorted = true]) {
      if (column < 1) return failure('#VALUE!', 'the column counts from 1');
      if (column > (grid[0]?.length ?? 0)) return failure('#REF!', `the table has no column ${column}`);
      return lookedUp(
        grid.map((row) => row[0] ?? null),
        keyOf(key),
        sorted,
        (place) => grid[place]?.[column - 1] ?? null,
      );
    },
    examples: [example('VLOOKUP(2; {1;10|2;20|3;30}; 2; FALSE)', '20', 'by hand')],
  }),
  builtin({
    name: 'HLOOKUP',
    group: 'look-up',
    section: '6.14.5',
    summary: 'Finds a key in the first row and gives the cell of another row in that column',
    searchWords: ['table', 'find', 'search', 'horizontal'],
    takes: [anything('key'), anyList('table'), whole('row'), optional(logical('sorted'))],
    gives(args) {
      const [key, table] = args;
      if (!key || !table) return NEUTRAL;
      return keyRefusal('HLOOKUP', key, table) ?? columnType('HLOOKUP', table, undefined);
    },
    evaluate([key, { grid }, row, sorted = true]) {
      if (row < 1) return failure('#VALUE!', 'the row counts from 1');
      if (row > grid.length) return failure('#REF!', `the table has no row ${row}`);
      return lookedUp(grid[0] ?? [], keyOf(key), sorted, (place) => grid[row - 1]?.[place] ?? null);
    },
    examples: [example('HLOOKUP("b"; {"a";"b"|1;2}; 2; FALSE)', '2', 'by hand')],
  }),
  builtin({
    name: 'LOOKUP',
    group: 'look-up',
    section: '6.14.8',
    summary: 'Finds the last sorted key that is not above the value and gives what stands beside it',
    searchWords: ['table', 'find', 'sorted'],
    takes: [anything('key'), anyList('keys'), optional(anyList('results'))],
    gives(args) {
      const [key, keys, results] = args;
      if (!key || !keys) return NEUTRAL;
      const columns = singles(keys.type);
      const [rows, width] = sizeOf(keys.type);
      const alongRow = width > rows;
      const keyColumns = alongRow ? columns : columns.slice(0, 1);
      const refusal = keyRefusal('LOOKUP', key, withColumns(keys, keyColumns));
      if (refusal) return refusal;
      if (results) return columnType('LOOKUP', results, undefined);
      return columnType('LOOKUP', keys, alongRow ? undefined : width);
    },
    evaluate([key, { grid }, results]) {
      const width = grid[0]?.length ?? 0;
      const alongRow = width > grid.length;
      const keys = alongRow ? (grid[0] ?? []) : grid.map((row) => row[0] ?? null);
      const other = results
        ? flat(results.grid)
        : alongRow
          ? (grid.at(-1) ?? [])
          : grid.map((row) => row[width - 1] ?? null);
      if (results && results.grid.length > 1 && (results.grid[0]?.length ?? 0) > 1) {
        return failure('#REF!', 'the results must be one row or one column');
      }
      return lookedUp(keys, keyOf(key), true, (place) =>
        place < other.length
          ? (other[place] ?? null)
          : failure('#N/A', 'the results are shorter than the keys'),
      );
    },
    examples: [example('LOOKUP(2.5; {1;2;3}; {10;20;30})', '20', 'by hand')],
  }),
  builtin({
    name: 'MATCH',
    group: 'look-up',
    section: '6.14.9',
    summary: 'The place of a value in a row or column: type 0 exact, 1 in rising, -1 in falling order',
    searchWords: ['find', 'position', 'place'],
    takes: [anything('value'), anyList('range'), optional(whole('type'))],
    gives(args) {
      const [key, where] = args;
      return (key && where && keyRefusal('MATCH', key, where)) ?? PLAIN_NUMBER;
    },
    evaluate([value, { grid }, type = 1]) {
      if (grid.length > 1 && (grid[0]?.length ?? 0) > 1) {
        return failure('#N/A', 'MATCH looks in one row or one column');
      }
      const key = keyOf(value);
      if (isFailure(key)) return key;
      const cells = flat(grid);
      const place = type === 0 ? exactPlace(cells, key) : sortedPlace(cells, key, type < 0);
      return place < 0 ? notFound(key) : place + 1;
    },
    examples: [
      example('MATCH(2.5; {4;3;2;1}; -1)', '2', 'by hand'),
      example('MATCH("b"; {"a";"b"}; 0)', '2', 'by hand'),
    ],
  }),
  builtin({
    name: 'INDEX',
    group: 'look-up',
    section: '6.14.6',
    summary: 'The cell of a table in a row and a column; 0 takes the whole row or column',
    searchWords: ['table', 'cell', 'row', 'column', 'element'],
    takes: [anyList('table'), optional(whole('row')), optional(whole('column'))],
    spills: true,
    gives: indexType,
    evaluate([{ grid }, row, column]) {
      const only = grid.length === 1 && grid[0]?.length === 1 ? grid[0][0] : undefined;
      // What went wrong in the table is told before the place that is missing in it.
      return only !== undefined && isFailure(only) ? only : indexed(grid, row, column);
    },
    examples: [
      example('INDEX({1;2|3;4}; 2; 1)', '3', 'by hand'),
      example('SUM(INDEX({1;2|3;4}; 0; 2))', '6', 'by hand'),
    ],
  }),
];
