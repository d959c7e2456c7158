/** What checkouts ask for, items signed and quizzes: what the database refuses when the service is gone round. */
import { createTestDatabase, type TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import { expectWrittenOnce, insertion, refusal, type Row } from '../support/refusals.js';
import { checkoutRows, type CheckoutIds, plantCheckouts } from './checkout-scene.js';
import { constraintsToProve, rowRefusal } from './refusals.js';

let db: TestDatabase;
let own: CheckoutIds;
let foreign: CheckoutIds;
type Rows = ReturnType<typeof checkoutRows>;
let rows: Rows;

beforeAll(async () => {
  db = await createTestDatabase();
  own = await plantCheckouts(db);
  foreign = await plantCheckouts(db);
  rows = checkoutRows(own);
}, 120_000);
afterAll(() => db.drop());

type Table = Exclude<keyof Rows, 'published'>;
type Case = [constraint: string, table: Table, wrong: () => Row];
const LONG = 'x'.repeat(1001);
const correction = (corrects: string, more: Row = {}): Row => ({ corrects, because: 'Another day', ...more });
const nightMark = (): Row => ({ item_id: own.fieldItem });
const choices = (more: Row): Row => ({
  ...{ kind: 'single', right_value: null, tolerance: null, choices: ['one', 'two'], right_letters: ['b'] },
  ...more,
});

const CASES: Case[] = [
  ['checkout_requirements_kind_chk', 'checkout_requirements', () => ({ kind: 'solo', condition: null })],
  [
    'checkout_requirements_group_chk',
    'checkout_requirements',
    () => ({ kind: 'equipment', condition: null, equipment_group: 'radio' }),
  ],
  ['checkout_requirements_condition_chk', 'checkout_requirements', () => ({ condition: 'fog' })],
  ['checkout_requirements_called_chk', 'checkout_requirements', () => ({ also_called: ['hills'] })],
  ['checkout_requirements_shape_chk', 'checkout_requirements', () => ({ model_id: own.modelId })],
  [
    'checkout_requirements_model_fk',
    'checkout_requirements',
    () => ({ kind: 'model', condition: null, model_id: foreign.modelId }),
  ],
  ['checkout_requirements_subject_uq', 'checkout_requirements', () => ({ condition: 'night' })],
  ['checkout_instructors_requirement_fk', 'checkout_instructors', () => ({ requirement_id: foreign.glass })],
  ['checkout_instructors_member_fk', 'checkout_instructors', () => ({ member_id: foreign.otherId })],
  ['checkout_instructors_pkey', 'checkout_instructors', () => ({ member_id: own.teacherId })],
  ['checkout_versions_number_chk', 'checkout_versions', () => ({ number: 0 })],
  ['checkout_versions_title_chk', 'checkout_versions', () => ({ title: ' ' })],
  ['checkout_versions_good_chk', 'checkout_versions', () => ({ good_days: 0 })],
  ['checkout_versions_quiz_chk', 'checkout_versions', () => ({ quiz_questions: 3 })],
  ['checkout_versions_published_chk', 'checkout_versions', () => ({ published_by: own.teacherId })],
  ['checkout_versions_number_uq', 'checkout_versions', () => ({ number: 1 })],
  ['checkout_versions_draft_uq', 'checkout_versions', () => ({ requirement_id: own.night })],
  ['checkout_versions_requirement_fk', 'checkout_versions', () => ({ requirement_id: foreign.glass })],
  [
    'checkout_versions_publisher_fk',
    'checkout_versions',
    () => ({ ...rows.published, published_by: foreign.teacherId }),
  ],
  ['checkout_items_position_chk', 'checkout_items', () => ({ position: 0 })],
  ['checkout_items_title_chk', 'checkout_items', () => ({ title: '' })],
  ['checkout_items_standard_chk', 'checkout_items', () => ({ standard: LONG })],
  ['checkout_items_manoeuvre_chk', 'checkout_items', () => ({ manoeuvre: 'loop' })],
  ['checkout_items_position_uq', 'checkout_items', () => ({ position: 1 })],
  ['checkout_items_title_uq', 'checkout_items', () => ({ title: 'Night landing' })],
  ['checkout_items_version_fk', 'checkout_items', () => ({ version_id: foreign.nightDraft })],
  ['checkout_prerequisites_version_fk', 'checkout_prerequisites', () => ({ version_id: foreign.nightDraft })],
  [
    'checkout_prerequisites_requirement_fk',
    'checkout_prerequisites',
    () => ({ requirement_id: foreign.glass }),
  ],
  ['checkout_prerequisites_pkey', 'checkout_prerequisites', () => ({ requirement_id: own.glass })],
  ['checkout_prerequisites_circle_chk', 'checkout_prerequisites', () => ({ requirement_id: own.night })],
  ['checkout_transfers_version_fk', 'checkout_transfers', () => ({ version_id: foreign.nightDraft })],
  ['checkout_transfers_model_fk', 'checkout_transfers', () => ({ model_id: foreign.modelId })],
  ['checkout_transfers_pkey', 'checkout_transfers', () => ({ model_id: own.modelId })],
  ['checkout_marks_outcome_chk', 'checkout_marks', () => ({ outcome: 'perhaps', note: 'Who knows' })],
  ['checkout_marks_note_chk', 'checkout_marks', () => ({ note: LONG })],
  ['checkout_marks_because_chk', 'checkout_marks', () => correction(own.signedMark, { because: 'no' })],
  ['checkout_marks_own_chk', 'checkout_marks', () => ({ ...nightMark(), signed_by: own.learnerId })],
  [
    'checkout_marks_itself_chk',
    'checkout_marks',
    () => {
      const id = newId();
      return correction(id, { id });
    },
  ],
  ['checkout_marks_correction_chk', 'checkout_marks', () => ({ withdraws: true })],
  ['checkout_marks_why_chk', 'checkout_marks', () => ({ outcome: 'not-yet', note: '' })],
  ['checkout_marks_corrects_uq', 'checkout_marks', () => correction(own.correctedMark)],
  ['checkout_marks_member_fk', 'checkout_marks', () => ({ member_id: foreign.learnerId })],
  ['checkout_marks_item_fk', 'checkout_marks', () => ({ item_id: foreign.glassItem })],
  ['checkout_marks_difference_fk', 'checkout_marks', () => ({ difference_id: foreign.differenceId })],
  ['checkout_marks_signer_fk', 'checkout_marks', () => ({ ...nightMark(), signed_by: foreign.teacherId })],
  // Of another item than the one it corrects.
  ['checkout_marks_corrects_fk', 'checkout_marks', () => correction(own.signedMark, nightMark())],
  ['checkout_marks_replaced_chk', 'checkout_marks', () => correction(own.withdrawnMark)],
  ['checkout_marks_in_force_chk', 'checkout_marks', () => ({ item_id: own.fieldOldItem })],
  ['checkout_marks_authorised_chk', 'checkout_marks', () => ({ signed_by: own.otherId })],
  [
    'checkout_marks_difference_chk',
    'checkout_marks',
    () => ({ ...nightMark(), difference_id: own.differenceId }),
  ],
  ['quiz_questions_topic_chk', 'quiz_questions', () => ({ topic: 'gossip' })],
  ['quiz_questions_kind_chk', 'quiz_questions', () => choices({ kind: 'essay' })],
  ['quiz_questions_text_chk', 'quiz_questions', () => ({ text: ' ' })],
  ['quiz_questions_unit_chk', 'quiz_questions', () => ({ unit: '' })],
  ['quiz_questions_reference_chk', 'quiz_questions', () => ({ reference: LONG })],
  ['quiz_questions_state_chk', 'quiz_questions', () => ({ state: 'gone' })],
  ['quiz_questions_answer_chk', 'quiz_questions', () => ({ tolerance: null })],
  ['quiz_questions_requirement_fk', 'quiz_questions', () => ({ requirement_id: foreign.glass })],
  ['quiz_attempts_member_fk', 'quiz_attempts', () => ({ member_id: foreign.otherId })],
  ['quiz_attempts_version_fk', 'quiz_attempts', () => ({ version_id: own.fieldVersion })],
  ['quiz_attempts_open_chk', 'quiz_attempts', () => ({ member_id: own.teacherId })],
  ['quiz_drawn_position_chk', 'quiz_drawn', () => ({ position: 0 })],
  ['quiz_drawn_position_uq', 'quiz_drawn', () => ({ position: 1 })],
  ['quiz_drawn_pkey', 'quiz_drawn', () => ({ question_id: own.question })],
  ['quiz_drawn_attempt_fk', 'quiz_drawn', () => ({ attempt_id: foreign.open })],
  ['quiz_drawn_question_fk', 'quiz_drawn', () => ({ question_id: foreign.question })],
  ['quiz_results_answers_chk', 'quiz_results', () => ({ answers: '{}' })],
  ['quiz_results_pass_chk', 'quiz_results', () => ({ pass_percent: 0 })],
  ['quiz_results_count_chk', 'quiz_results', () => ({ right_count: 3 })],
  ['quiz_results_passed_chk', 'quiz_results', () => ({ passed: false })],
  ['quiz_results_attempt_fk', 'quiz_results', () => ({ attempt_id: foreign.open })],
  ['quiz_results_pkey', 'quiz_results', () => ({ attempt_id: own.handedIn })],
  ['checkouts_group_chk', 'checkouts', () => ({ version_id: null, equipment_group: 'radio' })],
  [
    'checkouts_condition_chk',
    'checkouts',
    () => ({ version_id: null, kind: 'condition', equipment_group: null, condition: 'fog' }),
  ],
  [
    'checkouts_difference_chk',
    'checkouts',
    () => shownChange({ version_id: null, difference_id: own.differenceId }),
  ],
  ['checkouts_version_fk', 'checkouts', () => ({ version_id: foreign.glassVersion })],
  ['checkouts_difference_fk', 'checkouts', () => shownChange({ difference_id: foreign.differenceId })],
  ['checkouts_version_chk', 'checkouts', () => ({ version_id: null })],
  ['checkouts_in_force_chk', 'checkouts', () => ({ version_id: own.fieldOld, ...shortField() })],
  ['checkouts_subject_chk', 'checkouts', () => shortField()],
  ['checkouts_authorised_chk', 'checkouts', () => ({ signed_by: own.otherId })],
  ['checkouts_items_chk', 'checkouts', () => ({ version_id: own.fieldVersion, ...shortField() })],
];
const shortField = (): Row => ({ kind: 'condition', equipment_group: null, condition: 'short-field' });
const shownChange = (more: Row): Row => ({
  ...{ kind: 'differences', equipment_group: null, aircraft_id: own.aircraftId, ...more },
});
const stateFor = (constraint: string): string =>
  /_(uq|pkey)$/.test(constraint) ? '23505' : constraint.endsWith('_fk') ? '23503' : '23514';

/** Meets another refusal before its own unless the item is of a kind that takes what is tried. */
const PREPARED: Partial<Record<string, string>> = {
  checkouts_difference_fk: 'ALTER TABLE checkouts DISABLE TRIGGER checkouts_fit',
};

it.each(CASES)('%s', async (constraint, table, wrong) => {
  const row = rows[table](wrong());
  const named = { state: stateFor(constraint), constraint };
  const prepared = PREPARED[constraint];
  if (prepared === undefined) return expect(await rowRefusal(db, own.clubId, table, row)).toEqual(named);
  // The items of a change are asked for first.
  await db.admin.query('BEGIN');
  try {
    await db.admin.query(prepared);
    await expect(db.admin.query(...insertion(own.clubId, table, row))).rejects.toMatchObject({ constraint });
  } finally {
    await db.admin.query('ROLLBACK');
  }
});

it('each time for the constraint alone: the good rows pass', async () => {
  for (const table of Object.keys(rows).filter((name) => name !== 'published') as Table[]) {
    // Undone each time, so that one does not stand in the way of the next.
    const answer = await refusedWhenUndone(table, rows[table]());
    expect([table, answer]).toEqual([table, null]);
  }
});

async function refusedWhenUndone(table: Table, row: Row): Promise<unknown> {
  try {
    await db.tenantDb.run(own.clubId, (em) => em.query(...insertion(own.clubId, table, row)), {
      rehearse: true,
    });
    return null;
  } catch (error) {
    return (error as Error).message;
  }
}

it('checkout_versions_owner_uq, checkout_marks_owner_uq, quiz_questions_owner_uq and quiz_attempts_owner_uq only carry references: the keys say more', async () => {
  for (const [table, id] of [
    ['checkout_versions', own.glassVersion],
    ['checkout_marks', own.signedMark],
    ['quiz_questions', own.question],
    ['quiz_attempts', own.open],
  ] as const)
    expect(await rowRefusal(db, own.clubId, table, rows[table]({ id }))).toMatchObject({ state: '23505' });
});

it('has a case for every constraint of its tables', async () => {
  const tables = Object.keys(rows).filter((name) => name !== 'published' && name !== 'checkouts');
  const proven = CASES.map(([constraint]) => constraint);
  const needed = (await constraintsToProve(db, tables)).filter((name) => !name.endsWith('_owner_uq'));
  expect(needed.filter((name) => !proven.includes(name))).toEqual([]);
  expect(needed.length).toBeGreaterThan(50);
});

it('checkout_requirements_subject_kept: what a checkout is for does not change', async () => {
  const sql = `UPDATE checkout_requirements SET condition = 'mountain' WHERE id = '${own.night}'`;
  expect(await refusal(db, own.clubId, sql)).toMatchObject({
    constraint: 'checkout_requirements_subject_kept',
  });
});

it('checkout_versions_kept: a published version stays, with all it holds', async () => {
  const kept = { state: '23514', constraint: 'checkout_versions_kept' };
  const version = `'${own.glassVersion}'`;
  for (const sql of [
    `UPDATE checkout_versions SET good_days = 10 WHERE id = ${version}`,
    `UPDATE checkout_versions SET published_at = NULL, published_by = NULL WHERE id = ${version}`,
    `DELETE FROM checkout_versions WHERE id = ${version}`,
    `UPDATE checkout_items SET standard = 'Less' WHERE version_id = ${version}`,
    `UPDATE checkout_items SET version_id = ${version} WHERE id = '${own.nightItem}'`,
    `DELETE FROM checkout_items WHERE version_id = ${version}`,
  ])
    expect([sql, await refusal(db, own.clubId, sql)]).toEqual([sql, kept]);
  for (const table of ['checkout_items', 'checkout_prerequisites', 'checkout_transfers'] as const)
    expect(
      await rowRefusal(
        db,
        own.clubId,
        table,
        rows[table]({
          version_id: own.fieldVersion,
          requirement_id: table === 'checkout_prerequisites' ? own.glass : undefined,
        }),
      ),
    ).toEqual(kept);
});

it('checkout_prerequisites_circle_chk: two that would close a circle at once do not both pass', async () => {
  // Night (draft) asks for glass. A draft of glass that asks for short fields, whose draft asks for night, would close it.
  const drafts = [newId(), newId()];
  await db.tenantDb.run(own.clubId, async (em) => {
    await em.query(...insertion(own.clubId, 'checkout_versions', rows.checkout_versions({ id: drafts[0] })));
    await em.query(
      ...insertion(
        own.clubId,
        'checkout_versions',
        rows.checkout_versions({ id: drafts[1], requirement_id: own.field }),
      ),
    );
  });
  const answers = await Promise.all([
    rowRefusal(
      db,
      own.clubId,
      'checkout_prerequisites',
      rows.checkout_prerequisites({ version_id: drafts[0], requirement_id: own.field }),
    ),
    rowRefusal(
      db,
      own.clubId,
      'checkout_prerequisites',
      rows.checkout_prerequisites({ version_id: drafts[1], requirement_id: own.night }),
    ),
  ]);
  const refused = answers.filter((answer) => answer !== null);
  expect(refused).toEqual([{ state: '23514', constraint: 'checkout_prerequisites_circle_chk' }]);
});

it('checkouts_items_chk: an item that was withdrawn is not signed', async () => {
  await db.tenantDb.run(own.clubId, async (em) => {
    await em.query(...insertion(own.clubId, 'checkouts', rows.checkouts()));
    const row = rows.checkout_marks(correction(own.signedMark, { withdraws: true }));
    await em.query(...insertion(own.clubId, 'checkout_marks', row));
  });
  expect(await rowRefusal(db, own.clubId, 'checkouts', rows.checkouts())).toEqual({
    ...{ state: '23514', constraint: 'checkouts_items_chk' },
  });
});

it('quiz_questions_kept: a published question is only retired, and a retired one stays', async () => {
  const kept = { state: '23514', constraint: 'quiz_questions_kept' };
  const of = `WHERE id = '${own.question}'`;
  expect(await refusal(db, own.clubId, `UPDATE quiz_questions SET right_value = 72 ${of}`)).toEqual(kept);
  expect(await refusal(db, own.clubId, `UPDATE quiz_questions SET state = 'draft' ${of}`)).toEqual(kept);
  expect(await refusal(db, own.clubId, `DELETE FROM quiz_questions ${of}`)).toEqual(kept);
  expect(await refusal(db, own.clubId, `UPDATE quiz_questions SET state = 'retired' ${of}`)).toBeNull();
  expect(await refusal(db, own.clubId, `UPDATE quiz_questions SET state = 'published' ${of}`)).toEqual(kept);
});

it('checkout_marks_append_only, quiz_attempts_append_only, quiz_drawn_append_only, quiz_results_append_only', async () => {
  await expectWrittenOnce(db, own.clubId, [['checkout_marks', 'note']]);
  for (const [table, change] of [
    ['quiz_attempts', 'started_at = now()'],
    ['quiz_drawn', 'position = 3'],
    ['quiz_results', 'passed = true'],
  ] as const)
    for (const text of [`UPDATE ${table} SET ${change}`, `DELETE FROM ${table}`]) {
      expect(await refusal(db, own.clubId, text)).toMatchObject({ state: '42501' });
      await expect(db.admin.query(text)).rejects.toMatchObject({ constraint: `${table}_append_only` });
    }
});

it("shows and takes nothing of another club's", async () => {
  for (const table of Object.keys(rows).filter((name) => name !== 'published') as Table[]) {
    const seen = await db.tenantDb.run(own.clubId, (em) =>
      em.query(`SELECT 1 FROM ${table} WHERE club_id = $1`, [foreign.clubId]),
    );
    expect([table, seen]).toEqual([table, []]);
    const row = checkoutRows(foreign)[table]();
    expect(await refusal(db, own.clubId, ...insertion(foreign.clubId, table, row))).not.toBeNull();
  }
});
