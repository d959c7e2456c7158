import type pg from 'pg';
import { DataSource } from 'typeorm';
import { hashPassword } from '../accounts/passwords.js';
import { sealClub } from '../decisions/audit/seal.js';
import type { AppConfig } from '../platform/config.js';
import { connect } from '../platform/database/connection.js';
import type { Database } from '../platform/database/open.js';
import { TenantDb } from '../platform/database/tenant.js';
import type { Instant } from '../rules/index.js';
import { CHARGE_ENTITIES } from '../charges/entities.js';
import { FLEET_ENTITIES } from '../fleet/entities.js';
import { keepAccounts } from './accounts/ledger.js';
import { bookWishes, type Booked } from './book.js';
import { generateClub } from './generate.js';
import { DEMO_CLUB_ID, DEMO_SEED } from './ids.js';
import { DEMO_PASSWORD } from './sign-in.js';
import { hasFlights, insertClub, removeClub, storedDay } from './store.js';
import { middleOfToday } from './today/index.js';
import { When } from './when.js';

/** What a start found and did. `kept`: the demo club of the same day was there already. */
export interface Loaded {
  outcome: 'made' | 'made-anew' | 'kept';
  /** The day of the club that was there before. */
  before: string | null;
  bookings: Booked | null;
}

/**
 * Sees to it that the demo club of today is in the database: keeps one made earlier today, makes one of another day anew
 * (what was changed in it is lost), and touches no other club.
 */
export async function loadDemo(database: Database, config: AppConfig, asOf: Instant): Promise<Loaded> {
  const owner = await connect(database.ownerUrl, { variable: 'DATABASE_URL' });
  try {
    const before = await inTransaction(owner, () => storedDay(owner));
    const kept = before === new When(asOf).today;
    if (kept && (await inTransaction(owner, () => hasFlights(owner)))) {
      return { outcome: 'kept', before, bookings: null };
    }
    const club = generateClub({ seed: DEMO_SEED, asOf });
    const passwordHash = await hashPassword(DEMO_PASSWORD);
    await inTransaction(owner, async () => {
      if (before !== null) await removeClub(owner);
      await insertClub(owner, club, passwordHash);
    });
    const bookings = await withService(database, config, async (db) => {
      await keepAccounts(db, club.flown, { people: club.people, when: new When(asOf) });
      const booked = await bookWishes(db, club.wishes, asOf);
      await middleOfToday(db, club.people, new When(asOf));
      await sealClub(db, DEMO_CLUB_ID, 'all');
      return booked;
    });
    return { outcome: before === null ? 'made' : 'made-anew', before, bookings };
  } finally {
    await owner.end();
  }
}

async function inTransaction<T>(owner: pg.Client, work: () => Promise<T>): Promise<T> {
  await owner.query('BEGIN');
  try {
    const result = await work();
    await owner.query('COMMIT');
    return result;
  } catch (error) {
    await owner.query('ROLLBACK').catch(() => undefined);
    throw error;
  }
}

/** Bookings are made as the service makes them: by its role, behind row-level security. */
async function withService<T>(
  database: Database,
  config: AppConfig,
  work: (db: TenantDb) => Promise<T>,
): Promise<T> {
  const source = new DataSource(database.dataSourceOptions([...CHARGE_ENTITIES, ...FLEET_ENTITIES]));
  await source.initialize();
  try {
    return await work(new TenantDb(source, config));
  } finally {
    await source.destroy();
  }
}
