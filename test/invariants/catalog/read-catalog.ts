/**
 * Reads what a migrated database is made of, in a form that is the same on every supported PostgreSQL (15 to 18):
 * - NOT NULL is told with the column; PostgreSQL 18 also catalogues it as a constraint, which is left out here;
 * - extensions by name only, their versions go with the server;
 * - nothing that belongs to an extension;
 * - the schema's name is taken out of definitions, since what is qualified depends on the search path.
 */
import { createHash } from 'node:crypto';
import {
  COLUMNS,
  CONSTRAINTS,
  EXTENSIONS,
  FUNCTIONS,
  GRANTS,
  INDEXES,
  OTHERS,
  POLICIES,
  TABLES,
  TRIGGERS,
} from './catalog-queries.js';

/** Runs one query and gives its rows. */
export type Query = (sql: string) => Promise<Record<string, string>[]>;

/** One table as the live database has it. */
export interface TableCatalog {
  rowSecurity: string;
  columns: Record<string, string>;
  constraints: Record<string, string>;
  indexes: Record<string, string>;
  triggers: Record<string, string>;
  policies: Record<string, string>;
  /** Privileges by role; the owner's own are left out. */
  grants: Record<string, string>;
}

/** Everything the migrations made. */
export interface Catalog {
  extensions: string[];
  functions: Record<string, string>;
  /** Views, sequences not behind an identity, types and the like: there should be none. */
  others: string[];
  tables: Record<string, TableCatalog>;
}

const PARTS = {
  columns: COLUMNS,
  constraints: CONSTRAINTS,
  indexes: INDEXES,
  triggers: TRIGGERS,
  policies: POLICIES,
  grants: GRANTS,
} as const;

const plain = (definition: string): string =>
  definition.replaceAll('public.', '').replaceAll(/\s+/g, ' ').trim();

/** The live catalog of the schema `public`. */
export async function readCatalog(query: Query): Promise<Catalog> {
  const tables: Record<string, TableCatalog> = {};
  for (const { name, row_security: rowSecurity } of await query(TABLES)) {
    const empty = { columns: {}, constraints: {}, indexes: {}, triggers: {}, policies: {}, grants: {} };
    tables[name!] = { rowSecurity: rowSecurity!, ...empty };
  }
  for (const [part, sql] of Object.entries(PARTS) as [keyof typeof PARTS, string][]) {
    for (const row of await query(sql))
      tables[row['table_name']!]![part][row['name']!] = plain(row['definition']!);
  }
  const functions = (await query(FUNCTIONS)).map((row) => {
    const body = createHash('sha256')
      .update(row['body']!.trim().replaceAll(/\s+/g, ' '))
      .digest('hex')
      .slice(0, 16);
    return [row['name']!, `${plain(row['definition']!)}, body ${body}`] as const;
  });
  return {
    extensions: (await query(EXTENSIONS)).map((row) => row['name']!),
    functions: Object.fromEntries(functions),
    others: (await query(OTHERS)).map((row) => row['name']!),
    tables,
  };
}

/** The manifest's text, byte for byte as it is committed. */
export const catalogText = (catalog: Catalog): string => `${JSON.stringify(catalog, null, 2)}\n`;
