/** `replay`: verifies a club's chain of decisions and judges every stored decision again. */
import { parseArgs } from 'node:util';
import { DataSource, type EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { chainState, checkReceipt } from '../../decisions/audit/chain.js';
import { readReceipt, type Receipt } from '../../decisions/audit/receipt.js';
import { BEGINNING, verifyStretch } from '../../decisions/audit/verify.js';
import { replayPage, type Different } from '../../decisions/replay/replay-all.js';
import type { AppConfig } from '../../platform/config.js';
import { openDatabase, type OpenOptions } from '../../platform/database/open.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { StartupError } from '../../platform/startup-error.js';

const USAGE = `usage: npm run replay -- --club SLUG [--receipt 'bellcrank-receipt/1 ...']`;
const PAGE = 100;

/** What to print as it comes, and whether everything came out the same and whole. */
type Say = (line: string) => void;

/** Reads the command's arguments. @throws StartupError naming what is missing or wrong */
export function readArguments(args: string[]): { slug: string; receipt: Receipt | null } {
  let values: { club?: string; receipt?: string };
  try {
    ({ values } = parseArgs({ args, options: { club: { type: 'string' }, receipt: { type: 'string' } } }));
  } catch (error) {
    throw new StartupError(`${(error as Error).message}. ${USAGE}`);
  }
  if (!values.club) throw new StartupError(`--club must name a club. ${USAGE}`);
  if (values.receipt === undefined) return { slug: values.club, receipt: null };
  const receipt = readReceipt(values.receipt);
  if (!receipt) throw new StartupError(`--receipt must be the whole line as it was given. ${USAGE}`);
  return { slug: values.club, receipt };
}

/** Runs the command; true when the chain is whole and every decision came out the same. Nothing is written. */
export async function replayClub(
  config: AppConfig,
  args: string[],
  say: Say,
  options: OpenOptions = {},
): Promise<boolean> {
  const { slug, receipt } = readArguments(args);
  const database = await openDatabase(config, options);
  const source = new DataSource(database.dataSourceOptions([]));
  try {
    await source.initialize();
    const db = new TenantDb(source, config);
    const clubId = await clubOf(db, slug);
    const chainWhole = await verify(db, clubId, receipt, say);
    const allSame = await replayAll(db, clubId, say);
    return chainWhole && allSame;
  } finally {
    if (source.isInitialized) await source.destroy();
    await database.close();
  }
}

async function clubOf(db: TenantDb, slug: string): Promise<string> {
  const rows = await db.runWithoutClub<{ club_id: string }[]>(
    slug,
    (em: EntityManager) => em.query('SELECT club_id FROM clubs WHERE slug = $1', [slug]),
    { readOnly: true },
  );
  const [club] = rows;
  if (!club) throw new StartupError(`There is no club "${slug}". ${USAGE}`);
  return club.club_id;
}

async function verify(db: TenantDb, clubId: string, receipt: Receipt | null, say: Say): Promise<boolean> {
  const state = await db.run(clubId, (em) => chainState(em, clubId), { readOnly: true });
  const { reached, broken } = await verifyStretch(db, clubId, BEGINNING, Number.MAX_SAFE_INTEGER);
  say(
    broken
      ? `The chain is broken at link ${broken.seq} (${broken.fault}): ${broken.says}`
      : `The chain is whole: ${reached.seq} links, ${state.unsealed} records not sealed yet.`,
  );
  if (state.receipt && !broken) say(`Receipt: ${state.receipt}`);
  if (!receipt) return broken === null;
  if (receipt.club !== clubId) throw new StartupError('The receipt is of another club.');
  const held = await db.run(clubId, (em) => checkReceipt(em, receipt), { readOnly: true });
  say(held.says);
  return broken === null && held.holds;
}

async function replayAll(db: TenantDb, clubId: string, say: Say): Promise<boolean> {
  // Somebody on the machine itself reads everything.
  const viewer: SignedIn = { clubId, memberId: clubId, accountId: clubId, roles: ['administrator'] };
  const total = { checked: 0, identical: 0 };
  for (let afterId: string | null = null, more = true; more;) {
    const page = await replayPage(db, viewer, { afterId, limit: PAGE });
    total.checked += page.checked;
    total.identical += page.identical;
    for (const one of page.different) for (const line of linesOf(one)) say(line);
    for (const { decisionId, because } of page.damaged) say(`${decisionId}: cannot be replayed: ${because}`);
    afterId = page.nextAfterId;
    more = afterId !== null;
  }
  say(
    `${total.checked} decisions replayed: ${total.identical} byte for byte the same, ${total.checked - total.identical} not.`,
  );
  return total.identical === total.checked;
}

function* linesOf({ decisionId, differences, parts }: Different): Iterable<string> {
  for (const { rule, storedVersion, replayedVersion, stored, replayed, why } of differences) {
    yield `${decisionId}: ${rule}: was "${stored ?? 'not there'}" (version ${storedVersion ?? '-'}), is "${replayed ?? 'not there'}" (version ${replayedVersion ?? '-'}). ${why}`;
  }
  if (differences.length === 0) for (const { part, why } of parts) yield `${decisionId}: ${part}: ${why}`;
}
