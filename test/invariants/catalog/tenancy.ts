import { MIGRATIONS_TABLE } from '../../../src/platform/database/migrations.js';
import type { Catalog } from './read-catalog.js';

/** Tables that hold clubs' rows: all but the list of applied migrations, which the service never reads. */
export const tenantTables = (catalog: Catalog): string[] =>
  Object.keys(catalog.tables).filter((table) => table !== MIGRATIONS_TABLE);

const columns = (list: string): string[] => list.split(',').map((column) => column.trim());

/** The primary key's columns in order; empty when there is none. */
export function keyColumns(catalog: Catalog, table: string): string[] {
  for (const definition of Object.values(catalog.tables[table]!.constraints)) {
    const key = /^PRIMARY KEY \(([^)]+)\)/.exec(definition);
    if (key) return columns(key[1]!);
  }
  return [];
}

/** A foreign key of a club's table. */
export interface ForeignKey {
  table: string;
  name: string;
  from: string[];
  toTable: string;
  to: string[];
}

/** Every foreign key between clubs' tables. */
export function foreignKeys(catalog: Catalog): ForeignKey[] {
  return tenantTables(catalog).flatMap((table) =>
    Object.entries(catalog.tables[table]!.constraints).flatMap(([name, definition]) => {
      const key = /^FOREIGN KEY \(([^)]+)\) REFERENCES (\w+)\(([^)]+)\)/.exec(definition);
      return key ? [{ table, name, from: columns(key[1]!), toTable: key[2]!, to: columns(key[3]!) }] : [];
    }),
  );
}
