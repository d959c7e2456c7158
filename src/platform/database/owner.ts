/** The embedded cluster's inner set-up: the same division of rights that an external server would have. */
import { createHmac } from 'node:crypto';
import { connect, withLogin } from './connection.js';
import type { EmbeddedPostgres } from './embedded/index.js';

/** Owner of the database and its tables in the embedded cluster. Deliberately no superuser, as in a hosted database. */
export const OWNER_ROLE = 'bellcrank_owner';
/** Name of the database in the embedded cluster. */
export const DATABASE_NAME = 'bellcrank';

/** The owner's password: derived from the superuser's, which is kept in the data folder. */
export function ownerPassword(cluster: Pick<EmbeddedPostgres, 'password'>): string {
  return createHmac('sha256', cluster.password).update(`database role ${OWNER_ROLE}`).digest('base64url');
}

/** Makes the owner role and the database where they are missing; returns the owner's connection address. */
export async function ensureOwnedDatabase(cluster: EmbeddedPostgres, name = DATABASE_NAME): Promise<string> {
  const client = await connect(cluster.superuserUrl(), { variable: 'BELLCRANK_DATA_DIR' });
  const password = ownerPassword(cluster);
  try {
    const role = await client.query('SELECT 1 FROM pg_roles WHERE rolname = $1', [OWNER_ROLE]);
    const secret = client.escapeLiteral(password);
    if (role.rowCount === 0)
      await client.query(
        `CREATE ROLE ${OWNER_ROLE} LOGIN CREATEROLE NOSUPERUSER NOBYPASSRLS PASSWORD ${secret}`,
      );
    const database = await client.query('SELECT 1 FROM pg_database WHERE datname = $1', [name]);
    if (database.rowCount === 0) {
      await client.query(
        `CREATE DATABASE ${client.escapeIdentifier(name)} OWNER ${OWNER_ROLE} ENCODING 'UTF8' TEMPLATE template0`,
      );
    }
  } finally {
    await client.end();
  }
  return withLogin(cluster.superuserUrl(name), OWNER_ROLE, password);
}
