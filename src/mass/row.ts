/** Looking a name up in a table of materials. */
import { Fault } from '../problem.js';

type Table<Row> = Readonly<Record<string, Row>>;

/** The row of a table. @throws Fault when there is none, or it is of another kind: `itemRules` tells of that first. */
export function rowOf<Row>(table: Table<Row>, name: string, kind?: string): Row {
  const row = Object.hasOwn(table, name) ? table[name] : undefined;
  if (row === undefined || (kind !== undefined && kindOf(row) !== kind))
    throw new Fault(`no ${kind ?? 'row'} ${name} in a table of materials`);
  return row;
}

const kindOf = (row: unknown): unknown =>
  typeof row === 'object' && row !== null && 'kind' in row ? row.kind : undefined;
