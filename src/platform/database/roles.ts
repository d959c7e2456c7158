/**
 * Database roles. The owner makes and changes tables; the service connects as `bellcrank_service`, which owns nothing
 * and is bound by row-level security. Rights hang on the group `bellcrank_app`, so that a service role that an
 * administrator made by hand works the same way.
 */
import { createHmac } from 'node:crypto';
import type pg from 'pg';
import { setTimeout as pause } from 'node:timers/promises';
import { StartupError } from '../startup-error.js';

/** Group role that the migrations grant to. Cannot log in. */
export const GROUP_ROLE = 'bellcrank_app';
/** Login role of the service, unless DATABASE_SERVICE_URL brings another. */
export const SERVICE_ROLE = 'bellcrank_service';

/** The service role's password: derived, so that replicas that share the secret agree without talking. */
export function servicePassword(secret: string): string {
  return createHmac('sha256', secret).update(`database role ${SERVICE_ROLE}`).digest('base64url');
}

const roleExists = async (owner: pg.Client, role: string) =>
  (await owner.query('SELECT 1 FROM pg_roles WHERE rolname = $1', [role])).rowCount === 1;

/** Roles belong to the whole server, so services of different databases can collide here in ways no lock of one database prevents. */
async function tolerant(work: () => Promise<unknown>): Promise<void> {
  for (let attempt = 1; ; attempt += 1) {
    try {
      await work();
      return;
    } catch (error) {
      const code = (error as { code?: string }).code;
      if (code === '42710' || code === '23505') return; // somebody else has just made it
      const collided = code === 'XX000' && /concurrently/.test((error as Error).message);
      if (!collided || attempt >= 6) throw error;
      await pause(40 * attempt);
    }
  }
}

/** Makes the group role if missing. Run before the migrations. */
export async function ensureGroupRole(owner: pg.Client): Promise<void> {
  if (await roleExists(owner, GROUP_ROLE)) return;
  await tolerant(() => owner.query(`CREATE ROLE ${GROUP_ROLE} NOLOGIN`)).catch(explainMissingRight);
}

/** Makes the service role if missing and puts it into the group. */
export async function ensureServiceRole(owner: pg.Client, password: string): Promise<void> {
  if (!(await roleExists(owner, SERVICE_ROLE))) {
    const attributes = 'LOGIN NOSUPERUSER NOBYPASSRLS NOCREATEDB NOCREATEROLE NOREPLICATION';
    await tolerant(() =>
      owner.query(`CREATE ROLE ${SERVICE_ROLE} ${attributes} PASSWORD ${owner.escapeLiteral(password)}`),
    ).catch(explainMissingRight);
  }
  const member = await owner.query(`SELECT pg_has_role($1::name, $2::name, 'MEMBER') AS is`, [
    SERVICE_ROLE,
    GROUP_ROLE,
  ]);
  if (!member.rows[0].is)
    await tolerant(() => owner.query(`GRANT ${GROUP_ROLE} TO ${SERVICE_ROLE}`)).catch(explainMissingRight);
}

/** Gives the service role the password that the present secret derives. */
export async function setServicePassword(owner: pg.Client, password: string): Promise<void> {
  await tolerant(() =>
    owner.query(`ALTER ROLE ${SERVICE_ROLE} PASSWORD ${owner.escapeLiteral(password)}`),
  ).catch(explainMissingRight);
}

/** Lets the group into the database and its schema where an administrator has closed them to everybody. */
export async function ensureAccess(owner: pg.Client): Promise<void> {
  const { rows } = await owner.query(
    `SELECT current_database() AS db, has_database_privilege($1::name, current_database(), 'CONNECT') AS connect,
            has_schema_privilege($1::name, 'public', 'USAGE') AS usage`,
    [GROUP_ROLE],
  );
  const { db, connect, usage } = rows[0];
  if (!connect) await owner.query(`GRANT CONNECT ON DATABASE ${owner.escapeIdentifier(db)} TO ${GROUP_ROLE}`);
  if (!usage) await owner.query(`GRANT USAGE ON SCHEMA public TO ${GROUP_ROLE}`);
}

function explainMissingRight(error: unknown): never {
  if ((error as { code?: string }).code !== '42501') throw error;
  throw new StartupError(
    `the user of DATABASE_URL may not create or change roles (${(error as Error).message}). Have an administrator run ` +
      `"CREATE ROLE ${GROUP_ROLE} NOLOGIN; CREATE ROLE ${SERVICE_ROLE} LOGIN PASSWORD '...'; GRANT ${GROUP_ROLE} TO ${SERVICE_ROLE};" ` +
      'and set DATABASE_SERVICE_URL to that role, or give this user CREATEROLE.',
    { cause: error },
  );
}

/**
 * Checks, as the service role itself, that it cannot step round row-level security.
 * @throws StartupError saying which right it has too many, or that it is not in the group.
 */
export async function verifyServiceRole(service: pg.Client): Promise<void> {
  const { rows } = await service.query(
    `SELECT current_user AS name,
            bool_or(r.rolsuper) AS superuser,
            bool_or(r.rolbypassrls) AS bypass,
            (SELECT string_agg(c.relname, ', ' ORDER BY c.relname) FROM pg_class c
              WHERE c.relnamespace = 'public'::regnamespace AND c.relkind IN ('r', 'p')
                AND pg_has_role(current_user, c.relowner, 'MEMBER')) AS owned,
            pg_has_role(current_user, (SELECT oid FROM pg_roles WHERE rolname = $1), 'USAGE') AS member
       FROM pg_roles r WHERE pg_has_role(current_user, r.oid, 'MEMBER')`,
    [GROUP_ROLE],
  );
  const role = rows[0];
  const faults = [
    role.superuser && 'is a superuser (or may become one)',
    role.bypass && 'may bypass row-level security',
    role.owned && `owns tables (${String(role.owned).slice(0, 80)})`,
    !role.member && `is not a member of ${GROUP_ROLE}`,
  ].filter(Boolean);
  if (faults.length === 0) return;
  throw new StartupError(
    `the service's database role "${role.name}" ${faults.join(' and ')}, so clubs would not be kept apart. ` +
      `Point DATABASE_SERVICE_URL at a plain login role that is a member of ${GROUP_ROLE} and of nothing else, or unset it.`,
  );
}
