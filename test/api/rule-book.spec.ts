import { newId } from '../../src/platform/ids.js';
import { rulesetFor } from '../../src/rules/index.js';
import { startingPolicy } from '../../src/rules/packs/club/starting-policy.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, type ReadyClub } from '../support/ready-club.js';

interface Parameter {
  id: string;
  inForce: { says: string; from: string | null; to: string | null; reference: string } | null;
  history: { says: string }[];
  ofClub: boolean;
}
interface Rule {
  id: string;
  title: string;
  weight: string;
  inForce: { version: number; citation: { text: string } } | null;
  bodies: object[];
  branches: { says: string; statusWord: string }[];
  parameters: Parameter[];
  cures: { act: string; example: string }[];
  reads: { words: string }[];
}

describe('the rule book', () => {
  let api: Api;
  let ready: ReadyClub;

  beforeAll(async () => {
    api = await startApi();
    ready = await readyClub(api);
  });
  afterAll(() => api.stop());

  const read = async (query = ''): Promise<{ on: string; jurisdiction: string; items: Rule[] }> =>
    (await ready.member.get(`/rules${query}`).expect(200)).body;
  const ruleOn = async (id: string, on: string): Promise<Rule> =>
    (await ready.member.get(`/rules/${id}?on=${on}`).expect(200)).body.rule;

  test('has every rule that would judge the club’s flights, in words, as of today', async () => {
    const book = await read();
    expect(book).toMatchObject({ on: '2026-03-10', jurisdiction: 'US' });
    const { rules } = rulesetFor('US', startingPolicy());
    expect(book.items.map(({ id }) => id)).toEqual(rules.map(({ id }) => id));
    for (const rule of book.items) {
      expect(rule.inForce === null || rule.inForce.citation.text.length > 0).toBe(true);
      for (const { says, statusWord } of rule.branches) {
        expect(says).toMatch(/^[^{}]+[^.…][.…]$/);
        expect(statusWord).not.toMatch(/not-applicable|short/);
      }
    }
    const day = book.items.find(({ id }) => id === 'recency.passengers.day')!;
    expect(day).toMatchObject({
      weightWord: 'law',
      bindsWord: 'the pilot in command',
      inForce: { citation: { text: '14 CFR 61.57(a)', status: 'seen' } },
      numbers: expect.arrayContaining([expect.objectContaining({ says: '90 days', ofClub: false })]),
    });
    const whole = await ruleOn('recency.passengers.day', '2026-03-10');
    expect(whole.reads).toEqual([
      { key: 'pic.log', words: 'the pilot’s log' },
      { key: 'aircraft.type', words: 'the aircraft’s type and data' },
    ]);
    expect(whole.cures.map(({ act }) => act)).toContain('fly-landings-day');
    expect(whole.bodies).toHaveLength(2);
  });

  test('shows the club’s own numbers as the club set them, and on which day', async () => {
    await insertInto(api.sql, ready.club.clubId)('policy_values', {
      id: newId(),
      parameter_id: 'club.model-recency.days',
      valid_from: '2026-06-01',
      value: '45',
      reference: 'Committee minutes of 2 March 2026, item 4',
    });
    const days = async (on: string) =>
      (await ruleOn('club.model_recency', on)).parameters.find(({ id }) => id === 'club.model-recency.days')!;
    expect(await days('2026-05-31')).toMatchObject({
      ofClub: true,
      inForce: { says: '60 days', to: '2026-06-01' },
      history: [{ says: '60 days' }, { says: '45 days' }],
    });
    expect((await days('2026-06-01')).inForce).toMatchObject({
      says: '45 days',
      from: '2026-06-01',
      to: null,
      reference: 'Committee minutes of 2 March 2026, item 4',
    });
  });

  test('a changed law shows the text of the day', async () => {
    // 14 CFR 61.23(c)(3) (BasicMed) is in force since 1 May 2017; sport pilot limits were rewritten on 22 October 2025.
    expect((await ruleOn('medical.basicmed', '2017-04-30')).inForce).toBeNull();
    expect((await ruleOn('medical.basicmed', '2017-05-01')).inForce).not.toBeNull();
    const before = (await ruleOn('sport.limits', '2025-10-21')).inForce!;
    const after = (await ruleOn('sport.limits', '2025-10-22')).inForce!;
    expect(after.version).toBeGreaterThan(before.version);
  });

  test('is the book of the club’s jurisdiction', async () => {
    const there = await readyClub(api);
    await api.sql('UPDATE clubs SET jurisdiction = $2 WHERE club_id = $1', [there.club.clubId, 'EU']);
    const { body } = await there.member.get('/rules').expect(200);
    const ids = body.items.map(({ id }: Rule) => id);
    expect(ids).toContain('recency.easa.passengers');
    expect(ids).not.toContain('recency.passengers.day');
    await there.member.get('/rules/recency.passengers.day').expect(404);
  });

  test('refuses what it cannot read', async () => {
    await ready.member.get('/rules?on=2026-02-30').expect(400);
    await ready.member.get('/rules?day=2026-02-03').expect(400);
    const { body } = await ready.member.get('/rules/no.such_rule').expect(404);
    expect(body.detail).toContain('no such rule');
    await api.http.get('/api/v1/rules').expect(401);
  });
});
