/**
 * Replay: stored decisions of the demo club judged again come out the same, byte for byte, after a migration and after a
 * rules release; where a release dropped what they were made with, the finding that differs is named, and why.
 */
import type { MigrationInterface, QueryRunner } from 'typeorm';
import { MIGRATIONS } from '../../migrations/index.js';
import type { SignedIn } from '../../src/accounts/current-user.js';
import { replayClub } from '../../src/cli/replay/command.js';
import { sealClub } from '../../src/decisions/audit/seal.js';
import { storeDecisions } from '../../src/decisions/decision-store.js';
import { gatherSheets } from '../../src/decisions/gather/sheets.js';
import { replay } from '../../src/decisions/replay/replay.js';
import { replayPage, type ReplayedPage } from '../../src/decisions/replay/replay-all.js';
import { DamagedDecision, readDecisions, type StoredDecision } from '../../src/decisions/stored-decision.js';
import { aircraftBy } from '../../src/demo/fleet/aircraft.js';
import { DEMO_CLUB_ID, DEMO_SEED, DEMO_SLUG } from '../../src/demo/ids.js';
import { loadDemo } from '../../src/demo/load.js';
import { removeClub } from '../../src/demo/store.js';
import { everybody } from '../../src/demo/people/person.js';
import { tries } from '../../src/demo/tries.js';
import { When } from '../../src/demo/when.js';
import { connect } from '../../src/platform/database/connection.js';
import { migrate } from '../../src/platform/database/migrate.js';
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import {
  defineRule,
  judge,
  ParameterBook,
  POLICY_PARAMETERS,
  ruleList,
  rulesetFor,
  THIS_RELEASE,
  type Parameter,
  type Release,
  type Rule,
  type Ruleset,
} from '../../src/rules/index.js';
import { declaredBy, parametersChecked } from '../../src/rules/engine/stale.js';

const ASOF = '2027-02-27T18:00:00Z';
const LONG = 240_000;
const RULE = 'recency.passengers.day';
const OFFICER: SignedIn = {
  clubId: DEMO_CLUB_ID,
  memberId: 'nobody',
  accountId: 'nobody',
  roles: ['administrator'],
};

let db: TestDatabase;
let stored: StoredDecision[];

/** Every stored decision of the demo club, replayed page by page. */
async function replayAll(release: Release = THIS_RELEASE): Promise<Omit<ReplayedPage, 'nextAfterId'>> {
  const all: Omit<ReplayedPage, 'nextAfterId'> = { checked: 0, identical: 0, different: [], damaged: [] };
  for (let afterId: string | null = null, more = true; more;) {
    const page: ReplayedPage = await replayPage(db.tenantDb, OFFICER, { afterId, limit: 40 }, release);
    all.checked += page.checked;
    all.identical += page.identical;
    all.different.push(...page.different);
    all.damaged.push(...page.damaged);
    afterId = page.nextAfterId;
    more = afterId !== null;
  }
  return all;
}

/** A release whose rules are today's with something done to them. */
const releaseWith = (
  change: (rules: readonly Rule[]) => readonly Rule[],
  of: { retired?: readonly Rule[]; law?: (parameter: Parameter) => Parameter } = {},
): Release => ({
  retired: of.retired ?? [],
  rulesetFor(jurisdiction, policy): Ruleset {
    const today = rulesetFor(jurisdiction, policy);
    const rules = change(today.rules.filter((rule) => rule.id !== 'law.parameters_checked'));
    const law = declaredBy(today.rules)
      .map((id) => today.book.declaration(id)!)
      .filter((declared) => declared && !declared.id.startsWith('club.'));
    const book = new ParameterBook([...law.map(of.law ?? ((one) => one)), ...POLICY_PARAMETERS], policy);
    return { rules: [...rules, parametersChecked(book, declaredBy(rules))], book };
  },
});

/** A second form of a rule, which finds that nothing is ever met, and says so in other words. */
const corrected = (rule: Rule, superseded: readonly Rule[]): Rule =>
  defineRule({
    ...rule,
    title: `${rule.title}, corrected`,
    branches: { ...rule.branches, corrected: { status: 'short', says: 'The corrected rule is not met.' } },
    bodies: rule.bodies.map((body) => ({
      ...body,
      version: body.version + 1,
      judge: (_facts, _moment, _parameters, take) => take('corrected'),
    })),
    superseded,
    changed: 'Nobody meets it any more, to see what a replay says.',
  }) as Rule;

const replacing = (rules: readonly Rule[], by: (rule: Rule) => Rule): Rule[] =>
  rules.map((rule) => (rule.id === RULE ? by(rule) : rule));

const ADDED = ruleList(
  defineRule({
    id: 'law.added_since',
    title: 'Added since',
    weight: 'law',
    binds: 'flight',
    reads: [],
    parameters: [],
    branches: { never: { status: 'short', says: 'Never met.' } },
    bodies: [
      {
        ...{ version: 1, from: null, to: null },
        citation: { text: 'A test', status: 'common practice, no source' },
        judge: (_facts, _moment, _parameters, take) => take('never'),
      },
    ],
  }),
);

beforeAll(async () => {
  db = await createTestDatabase();
  await loadDemo(db.database, db.config, ASOF);
  // What was booked was allowed. The tries bring every other answer in.
  await db.tenantDb.run(DEMO_CLUB_ID, async (em) => {
    for (const { ask, person, aircraft } of tries(everybody(DEMO_SEED, new When(ASOF)), new When(ASOF))) {
      const aircraftIds = [aircraftBy(aircraft).id];
      const { sheets, policy } = await gatherSheets(em, {
        request: ask,
        memberId: person.id,
        aircraftIds,
        knownAt: ASOF,
      });
      const decided = sheets.map((sheet) => ({ id: newId(), sheet, decision: judge(sheet, policy) }));
      await storeDecisions(em, decided, policy, person.id);
    }
  });
  const read = await db.tenantDb.run(DEMO_CLUB_ID, (em) => readDecisions(em, { afterId: null, limit: 1000 }));
  stored = read.filter((one): one is StoredDecision => !(one instanceof DamagedDecision));
}, LONG);
afterAll(() => db.drop());

/** All came out the same, and there were some of every answer. */
function expectSame(all: Omit<ReplayedPage, 'nextAfterId'>): void {
  expect(all.different.slice(0, 2)).toEqual([]);
  expect(all).toEqual({ checked: stored.length, identical: stored.length, different: [], damaged: [] });
}

test('there is something to replay', () => {
  expect(stored.length).toBeGreaterThan(110);
  expect([...new Set(stored.map((one) => one.decision.answer))].sort()).toEqual(
    ['ask-officer', 'dual-only', 'no', 'yes', 'yes-with-conditions'].sort(),
  );
  expect(stored.every((one) => one.law !== null && one.law.length > 50)).toBe(true);
});

describe('byte for byte the same', () => {
  test('with the release that decided', async () => expectSame(await replayAll()), LONG);

  test(
    'after migrations were taken back and applied again, and after one that moves the rows about',
    async () => {
      const [{ before }] = (
        await db.admin.query(`SELECT md5(string_agg(d::text, '|' ORDER BY id)) AS before FROM decisions d`)
      ).rows as [{ before: string }];
      class MovesRows1764000009999 implements MigrationInterface {
        async up(runner: QueryRunner): Promise<void> {
          await runner.query(`
            ALTER TABLE decisions ADD COLUMN remark text NOT NULL DEFAULT '';
            ALTER TABLE decisions ALTER COLUMN parts TYPE jsonb USING (parts::text)::jsonb;
            ALTER TABLE fact_parts ALTER COLUMN body SET STORAGE EXTERNAL;
          `);
        }
        async down(runner: QueryRunner): Promise<void> {
          await runner.query('ALTER TABLE decisions DROP COLUMN remark');
        }
      }
      const migrations = [...MIGRATIONS, MovesRows1764000009999];
      expect(await migrate(db.config, 'up', { migrations })).toEqual(['applied MovesRows1764000009999']);
      expectSame(await replayAll());
      expect(await migrate(db.config, 'down', { migrations })).toEqual(['took back MovesRows1764000009999']);
      // Back to where decisions had no chain, and on again: the chain goes, the decisions stay.
      const back: string[] = [];
      while (!back.at(-1)?.includes('DecisionChain')) back.push(...(await migrate(db.config, 'down')));
      expectSame(await replayAll());
      expect(await migrate(db.config, 'up')).toHaveLength(back.length);
      expectSame(await replayAll());
      const [{ after }] = (
        await db.admin.query(`SELECT md5(string_agg(d::text, '|' ORDER BY id)) AS after FROM decisions d`)
      ).rows as [{ after: string }];
      expect(after).toBe(before);
    },
    LONG,
  );

  test.each<[what: string, release: Release]>([
    [
      'in which a rule has a second version, and the first is kept',
      releaseWith((rules) => replacing(rules, (rule) => corrected(rule, [rule]))),
    ],
    [
      'two releases on, with both earlier versions kept one inside the other',
      releaseWith((rules) =>
        replacing(rules, (rule) => {
          const second = corrected(rule, [rule]);
          return corrected(second, [second]);
        }),
      ),
    ],
    [
      'in which every rule has a second version',
      releaseWith((rules) => rules.map((rule) => corrected(rule, [rule]))),
    ],
    ['with a rule more', releaseWith((rules) => [...ADDED, ...rules])],
    ['with its rules in another order', releaseWith((rules) => [...rules].reverse())],
    [
      'that has a rule no more, and keeps it for replays',
      releaseWith((rules) => rules.filter((rule) => rule.id !== RULE), {
        retired: rulesetFor('US', { values: [] }).rules.filter((rule) => rule.id === RULE),
      }),
    ],
    [
      'that corrects the numbers of the law, and has held them against their source again',
      releaseWith((rules) => rules, {
        law: (parameter) => ({
          ...parameter,
          checkedOn: '2027-01-15',
          values: parameter.values.map((dated) => ({
            ...dated,
            value: typeof dated.value === 'number' ? dated.value + 1 : dated.value,
          })),
        }),
      }),
    ],
  ])('after a release %s', async (_what, release) => expectSame(await replayAll(release)), LONG);
});

describe('a release without what was decided with', () => {
  const ofRule = (): StoredDecision[] =>
    stored.filter((one) => one.decision.findings.some((finding) => finding.rule === RULE));

  test(
    'names the rule, both versions, what was found then and now, and what changed',
    async () => {
      const all = await replayAll(releaseWith((rules) => replacing(rules, (rule) => corrected(rule, []))));
      expect(all).toMatchObject({ checked: stored.length, identical: 0, damaged: [] });
      for (const { decisionId, differences, parts } of all.different) {
        const was = stored
          .find((one) => one.id === decisionId)!
          .decision.findings.find((one) => one.rule === RULE)!;
        // The search for the horizon may end elsewhere; no other finding may be another.
        expect([decisionId, differences.map((one) => one.rule)]).toEqual([decisionId, [RULE]]);
        expect(differences[0]).toEqual({
          ...{ rule: RULE, storedVersion: 2, replayedVersion: 3, reason: 'version-gone' },
          stored: `${was.status}: ${was.says}`,
          replayed: 'short: The corrected rule is not met.',
          why: 'This program no longer has versions 1 and 2 of the rule; it was judged with versions 2 and 3 instead. What changed: Nobody meets it any more, to see what a replay says.',
        });
        expect(parts.map(({ part }) => part)).toContain('digest');
      }
      expect(all.different.length).toBe(ofRule().length);
    },
    LONG,
  );

  test('says when a lost version made no difference but its number', () => {
    const release = releaseWith((rules) =>
      replacing(rules, (rule) => ({
        ...rule,
        bodies: rule.bodies.map((body) => ({ ...body, version: 6 + body.version })),
      })),
    );
    const again = replay(stored[0]!, OFFICER, release);
    expect(again.differences).toEqual([
      expect.objectContaining({ rule: RULE, storedVersion: 2, replayedVersion: 8, reason: 'version-gone' }),
    ]);
    expect(again.differences[0]!.why).toMatch(/versions 7 and 8 instead\. It says the same\.$/);
    expect(again.parts.map(({ part }) => part)).toEqual(['digest']);
    expect(again.changedRules).toEqual([RULE]);
  });

  test('names a rule that is gone in every version', () => {
    const again = replay(
      stored[0]!,
      OFFICER,
      releaseWith((rules) => rules.filter((rule) => rule.id !== RULE)),
    );
    expect(again.differences).toEqual([
      expect.objectContaining({
        rule: RULE,
        storedVersion: 2,
        replayedVersion: null,
        replayed: null,
        reason: 'rule-gone',
      }),
    ]);
  });

  test('names the numbers that changed, for decisions from before they were kept', () => {
    const release = releaseWith((rules) => rules, {
      law: (parameter) =>
        parameter.id === 'us.passenger-recency.days'
          ? { ...parameter, values: parameter.values.map((dated) => ({ ...dated, value: 60 })) }
          : parameter,
    });
    const one = stored.find((each) =>
      each.decision.findings.some((finding) =>
        finding.parameters.some((read) => read.id === 'us.passenger-recency.days'),
      ),
    )!;
    const again = replay({ ...one, law: null }, OFFICER, release);
    const difference = again.differences.find((each) => each.rule === RULE)!;
    expect(difference).toMatchObject({ reason: 'numbers-changed', storedVersion: 2, replayedVersion: 2 });
    expect(difference.why).toMatch(/us\.passenger-recency\.days was 90 \(14 CFR .*\) and is 60/);
    expect(again.lawKept).toBe(false);
    expect(replay(one, OFFICER, release)).toMatchObject({ identical: true, lawKept: true });
  });

  test('and without a new version is told as what nothing stored explains', () => {
    const release = releaseWith((rules) =>
      replacing(rules, (rule) => ({ ...rule, title: 'Another title under the old number' })),
    );
    expect(replay(stored[0]!, OFFICER, release).differences).toEqual([
      expect.objectContaining({ rule: RULE, reason: 'unexplained' }),
    ]);
  });
});

describe('a record that was altered', () => {
  const altered = (change: (one: StoredDecision) => Partial<StoredDecision>) => {
    const one = structuredClone(stored[0]!);
    return replay({ ...one, ...change(one) }, OFFICER);
  };

  test('in its facts does not fit its digest', () => {
    const again = altered((one) => ({
      sheet: { ...one.sheet, flight: { ...one.sheet.flight, personsOnBoard: 9 } },
    }));
    expect(again.identical).toBe(false);
    expect(again.differences.map((one) => one.reason)).toContain('record-altered');
    expect(again.parts).toContainEqual({ part: 'digest', why: expect.any(String) });
  });

  test('in a finding is explained by nothing', () => {
    const again = altered((one) => {
      const findings = one.decision.findings.map((finding, index) =>
        index === 3 ? { ...finding, says: 'All is well.' } : finding,
      );
      const decision = { ...one.decision, findings };
      return { decision, body: JSON.stringify(decision) };
    });
    expect(again.differences).toEqual([
      expect.objectContaining({ reason: 'unexplained', stored: expect.stringContaining('All is well.') }),
    ]);
    expect(again.parts).toEqual([]);
  });

  test('in its answer alone differs there and in no finding', () => {
    const again = altered((one) => {
      const decision = { ...one.decision, answer: 'ask-officer' as const };
      return { decision, body: JSON.stringify(decision) };
    });
    expect(again.differences).toEqual([]);
    expect(again.parts).toEqual([{ part: 'answer', why: expect.stringContaining('altered') }]);
  });

  test('in its bytes alone is not identical either', () => {
    const again = altered((one) => ({ body: `${one.body} ` }));
    expect(again).toMatchObject({ identical: false, differences: [], parts: [{ part: 'bytes' }] });
  });

  test('beyond reading is counted as damaged, and the others go on', async () => {
    const [first, second] = [stored[0]!.id, stored[1]!.id];
    await db.admin.query('BEGIN');
    await db.admin.query('SET LOCAL session_replication_role = replica');
    await db.admin.query(`CREATE TABLE kept AS SELECT * FROM decisions WHERE id IN ($1, $2)`, [
      first,
      second,
    ]);
    await db.admin.query(`UPDATE decisions SET body = 'no decision' WHERE id = $1`, [first]);
    await db.admin.query(
      `UPDATE decisions SET parts = jsonb_set(parts, '{policy}', '"none"') WHERE id = $1`,
      [second],
    );
    await db.admin.query('COMMIT');
    try {
      const all = await replayAll();
      expect(all).toMatchObject({ checked: stored.length, identical: stored.length - 2, different: [] });
      expect(all.damaged).toEqual([
        { decisionId: first, because: 'the decision itself is not JSON' },
        { decisionId: second, because: 'the part none of its facts is missing' },
      ]);
    } finally {
      await db.admin.query('BEGIN');
      await db.admin.query('SET LOCAL session_replication_role = replica');
      await db.admin.query(
        'UPDATE decisions d SET body = k.body, parts = k.parts FROM kept k WHERE k.id = d.id',
      );
      await db.admin.query('DROP TABLE kept');
      await db.admin.query('COMMIT');
    }
    expectSame(await replayAll());
  });
});

describe('the command', () => {
  const run = async (...args: string[]): Promise<{ same: boolean; lines: string[] }> => {
    const lines: string[] = [];
    const same = await replayClub(db.config, args, (line) => lines.push(line));
    return { same, lines };
  };

  test(
    'says that the chain is whole and all decisions came out the same, and gives a receipt that holds',
    async () => {
      const sealed = await sealClub(db.tenantDb, DEMO_CLUB_ID, 'all');
      expect(sealed).toBe(stored.length);
      const { same, lines } = await run('--club', DEMO_SLUG);
      expect([same, lines]).toEqual([
        true,
        [
          `The chain is whole: ${sealed} links, 0 records not sealed yet.`,
          expect.stringMatching(
            new RegExp(`^Receipt: bellcrank-receipt/1 ${DEMO_CLUB_ID} ${sealed} [0-9a-f]{64} 2`),
          ),
          `${sealed} decisions replayed: ${sealed} byte for byte the same, 0 not.`,
        ],
      ]);
      const receipt = lines[1]!.replace('Receipt: ', '');
      const again = await run('--club', DEMO_SLUG, '--receipt', receipt);
      expect(again.lines).toContain(`Link ${sealed} is the one of the receipt.`);
      expect(again.same).toBe(true);
      const forged = await run(
        '--club',
        DEMO_SLUG,
        '--receipt',
        receipt.replace(/[0-9a-f]{64}/, 'a'.repeat(64)),
      );
      expect(forged.same).toBe(false);
    },
    LONG,
  );

  test(
    'names the link and the decision that were tampered with',
    async () => {
      const one = stored[2]!;
      const tamper = async (from: string, to: string): Promise<void> => {
        await db.admin.query('BEGIN');
        await db.admin.query('SET LOCAL session_replication_role = replica');
        await db.admin.query('UPDATE decisions SET body = replace(body, $2, $3) WHERE id = $1', [
          one.id,
          from,
          to,
        ]);
        await db.admin.query('COMMIT');
      };
      const caution = one.decision.caution;
      await tamper(caution, 'All is well.');
      try {
        const { same, lines } = await run('--club', DEMO_SLUG);
        expect(same).toBe(false);
        expect(lines[0]).toMatch(
          new RegExp(`^The chain is broken at link \\d+ \\(record-altered\\): .*${one.id}`),
        );
        expect(lines.slice(1)).toEqual([
          expect.stringMatching(new RegExp(`^${one.id}: caution: `)),
          `${stored.length} decisions replayed: ${stored.length - 1} byte for byte the same, 1 not.`,
        ]);
      } finally {
        await tamper('All is well.', caution);
      }
    },
    LONG,
  );

  test(
    'says what is wrong with how it was called',
    async () => {
      await expect(run()).rejects.toThrow(/--club must name a club/);
      await expect(run('--club', 'nobody')).rejects.toThrow(/There is no club "nobody"/);
      await expect(run('--klub', 'x')).rejects.toThrow(/usage/);
      await expect(run('--club', DEMO_SLUG, '--receipt', 'x')).rejects.toThrow(/the whole line/);
      const foreign = `bellcrank-receipt/1 ${newId()} 1 ${'a'.repeat(64)} 2027-01-01T00:00:00Z`;
      await expect(run('--club', DEMO_SLUG, '--receipt', foreign)).rejects.toThrow(/another club/);
    },
    LONG,
  );
});

test('the demo club is made anew another day, chain and all', async () => {
  const owner = await connect(db.ownerUrl, { variable: 'DATABASE_URL' });
  const links = async () => (await owner.query('SELECT 1 FROM decision_chain')).rows.length;
  try {
    await owner.query('BEGIN');
    await owner.query("SELECT set_config('bellcrank.club_id', $1, true)", [DEMO_CLUB_ID]);
    expect(await links()).toBe(stored.length);
    await removeClub(owner);
    expect(await links()).toBe(0);
  } finally {
    await owner.query('ROLLBACK');
    await owner.end();
  }
});
