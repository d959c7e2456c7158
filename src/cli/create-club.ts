/** `create-club`: makes a club with its starting policy and its first administrator. The only way a club comes to be. */
import { randomBytes } from 'node:crypto';
import { parseArgs } from 'node:util';
import type pg from 'pg';
import { hashPassword } from '../accounts/passwords.js';
import { writeStartingPolicy } from '../clubs/policy/starting-values.js';
import { Clock } from '../platform/clock.js';
import type { AppConfig } from '../platform/config.js';
import { connect } from '../platform/database/connection.js';
import { openDatabase, type OpenOptions } from '../platform/database/open.js';
import { newId } from '../platform/ids.js';
import { StartupError } from '../platform/startup-error.js';
import { localDateOf, toSeconds } from '../rules/index.js';

const USAGE =
  'create-club --slug hill-flyers --name "Hill Flyers" --zone America/Denver --jurisdiction US ' +
  '--admin-name "Alex Example" --admin-email alex@example.org';

/** A club to be made. */
export interface NewClub {
  slug: string;
  name: string;
  zone: string;
  jurisdiction: 'US' | 'EU' | 'CA';
  adminName: string;
  adminEmail: string;
}

/** Reads the command's arguments. @throws StartupError naming what is missing or wrong. */
export function readNewClub(args: string[]): NewClub {
  const options = { slug: S, name: S, zone: S, jurisdiction: S, 'admin-name': S, 'admin-email': S } as const;
  let values: Partial<Record<keyof typeof options, string>>;
  try {
    ({ values } = parseArgs({ args, options }));
  } catch (error) {
    throw new StartupError(`${(error as Error).message}. Usage: ${USAGE}`);
  }
  const need = (name: keyof typeof options, right: (value: string) => boolean, form: string): string => {
    const value = values[name]?.trim();
    if (!value || !right(value)) throw new StartupError(`--${name} must be ${form}. Usage: ${USAGE}`);
    return value;
  };
  return {
    slug: need(
      'slug',
      (value) => /^[a-z0-9]+(-[a-z0-9]+)*$/.test(value) && value.length <= 60,
      'lower-case letters, digits and hyphens',
    ),
    name: need('name', () => true, 'the name of the club'),
    zone: need('zone', isZone, 'an IANA time zone, such as America/Denver'),
    jurisdiction: need(
      'jurisdiction',
      (value) => ['US', 'EU', 'CA'].includes(value),
      'US, EU or CA',
    ) as NewClub['jurisdiction'],
    adminName: need('admin-name', () => true, "the first administrator's name"),
    adminEmail: need(
      'admin-email',
      (value) => /^\S+@\S+$/.test(value),
      "the first administrator's e-mail address",
    ).toLowerCase(),
  };
}

const S = { type: 'string' } as const;

function isZone(zone: string): boolean {
  try {
    localDateOf(0, zone);
    return zone.includes('/') || zone === 'UTC';
  } catch {
    return false;
  }
}

/** Makes the club as the owner of the database and returns the lines to print; the password is shown once. */
export async function createClub(
  config: AppConfig,
  args: string[],
  options: OpenOptions = {},
): Promise<string[]> {
  const club = readNewClub(args);
  const database = await openDatabase(config, options);
  const owner = await connect(database.ownerUrl, { variable: 'DATABASE_URL' });
  const password = randomBytes(15).toString('base64url');
  try {
    await owner.query('BEGIN');
    await insertClub(owner, club, await hashPassword(password), new Clock().now());
    await owner.query('COMMIT');
  } catch (error) {
    await owner.query('ROLLBACK').catch(() => undefined);
    if ((error as { constraint?: string }).constraint === 'clubs_slug_uq') {
      throw new StartupError(`There is a club "${club.slug}" already. Choose another --slug.`);
    }
    throw error;
  } finally {
    await owner.end();
    await database.close();
  }
  return [
    `Club "${club.slug}" (${club.name}) is made, with the starting policy.`,
    `Sign in as ${club.adminEmail} with the password ${password} and change it.`,
  ];
}

async function insertClub(owner: pg.Client, club: NewClub, passwordHash: string, now: string): Promise<void> {
  const clubId = newId();
  const adminId = newId();
  const today = localDateOf(toSeconds(now), club.zone);
  await owner.query(
    "SELECT set_config('bellcrank.club_id', $1, true), set_config('bellcrank.actor_id', $2, true)",
    [clubId, adminId],
  );
  await owner.query(
    'INSERT INTO clubs (club_id, slug, name, zone, jurisdiction) VALUES ($1, $2, $3, $4, $5)',
    [clubId, club.slug, club.name, club.zone, club.jurisdiction],
  );
  await writeStartingPolicy(owner, clubId);
  await owner.query(
    `INSERT INTO members (club_id, id, name, email, standing_since, membership_from) VALUES ($1, $2, $3, $4, $5, $5)`,
    [clubId, adminId, club.adminName, club.adminEmail, today],
  );
  await owner.query(
    "INSERT INTO member_roles (club_id, member_id, role) SELECT $1, $2, unnest(ARRAY['member', 'administrator'])",
    [clubId, adminId],
  );
  await owner.query(
    'INSERT INTO accounts (club_id, id, member_id, email, password_hash) VALUES ($1, $2, $3, $4, $5)',
    [clubId, newId(), adminId, club.adminEmail, passwordHash],
  );
}
