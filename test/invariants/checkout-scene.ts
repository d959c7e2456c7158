/** Rows of what checkouts ask for, made past every service. */
import type { TestDatabase } from '../../src/platform/database/testing.js';
import { newId } from '../../src/platform/ids.js';
import type { Row } from '../support/refusals.js';
import { fleetRows } from './fleet-rows.js';
import { fleetIds, insertAircraft, insertRow, plantClub } from './refusals.js';

/** Ids of one club's rows. `glass` is signed by the teacher only; `field` has had a version before the one in force. */
export interface CheckoutIds {
  clubId: string;
  learnerId: string;
  teacherId: string;
  otherId: string;
  modelId: string;
  otherModelId: string;
  aircraftId: string;
  differenceId: string;
  /** Requirements. */
  glass: string;
  night: string;
  field: string;
  /** Versions: in force, a draft of the night checkout, the older one and the one in force for short fields. */
  glassVersion: string;
  nightDraft: string;
  fieldOld: string;
  fieldVersion: string;
  /** Items of them. */
  glassItem: string;
  nightItem: string;
  fieldOldItem: string;
  fieldItem: string;
  signedMark: string;
  correctedMark: string;
  withdrawnMark: string;
  question: string;
  draftQuestion: string;
  handedIn: string;
  open: string;
}

const SIGNED_ON = '2026-03-01';

export function checkoutRows(ids: CheckoutIds) {
  const row =
    (sound: Row) =>
    (more: Row = {}): Row => ({ club_id: ids.clubId, id: newId(), ...sound, ...more });
  const published = { published_at: '2026-02-01T10:00:00Z', published_by: ids.teacherId };
  return {
    published,
    checkout_requirements: row({ kind: 'condition', condition: 'mountain' }),
    checkout_versions: row({ requirement_id: ids.glass, number: 7, title: 'Glass panel' }),
    checkout_items: row({
      ...{ version_id: ids.nightDraft, position: 9, title: 'Lights', standard: 'Names each', required: true },
    }),
    checkout_prerequisites: row({ id: undefined, version_id: ids.nightDraft, requirement_id: ids.field }),
    checkout_transfers: row({ id: undefined, version_id: ids.nightDraft, model_id: ids.otherModelId }),
    checkout_instructors: row({ id: undefined, requirement_id: ids.glass, member_id: ids.otherId }),
    checkout_marks: row({
      ...{ member_id: ids.learnerId, item_id: ids.glassItem, outcome: 'signed', marked_on: SIGNED_ON },
      signed_by: ids.teacherId,
    }),
    quiz_questions: row({
      ...{
        requirement_id: ids.glass,
        topic: 'limits',
        kind: 'number',
        text: 'At what speed?',
        state: 'draft',
      },
      ...{ right_value: 71, tolerance: 1 },
    }),
    quiz_attempts: row({
      ...{ member_id: ids.otherId, requirement_id: ids.glass, version_id: ids.glassVersion },
      started_at: '2026-03-01T10:00:00Z',
    }),
    quiz_drawn: row({
      ...{ id: undefined, requirement_id: ids.glass, attempt_id: ids.open, question_id: ids.draftQuestion },
      position: 2,
    }),
    quiz_results: row({
      ...{
        id: undefined,
        attempt_id: ids.open,
        answers: '[]',
        right_count: 1,
        asked_count: 2,
        pass_percent: 50,
      },
      ...{ passed: true, handed_in_at: '2026-03-01T10:20:00Z' },
    }),
    checkouts: row({
      ...{
        member_id: ids.learnerId,
        kind: 'equipment',
        equipment_group: 'glass-panel',
        signed_on: SIGNED_ON,
      },
      ...{ signed_by: ids.teacherId, version_id: ids.glassVersion },
    }),
  };
}

const OWN_IDS = [
  ...[
    'otherModelId',
    'learnerId',
    'teacherId',
    'otherId',
    'differenceId',
    'glass',
    'night',
    'field',
    'glassVersion',
  ],
  ...['nightDraft', 'fieldOld', 'fieldVersion', 'glassItem', 'nightItem', 'fieldOldItem', 'fieldItem'],
  ...['signedMark', 'correctedMark', 'withdrawnMark', 'question', 'draftQuestion', 'handedIn', 'open'],
] as const;

/** Plants it, each version published by the transaction that writes it. */
export async function plantCheckouts(db: TestDatabase): Promise<CheckoutIds> {
  const fleet = fleetIds(await plantClub(db));
  const { clubId, modelId, aircraftId } = fleet;
  const own = Object.fromEntries(OWN_IDS.map((name) => [name, newId()]));
  const ids = { clubId, modelId, aircraftId, ...own } as unknown as CheckoutIds;
  const rows = checkoutRows(ids);
  await db.tenantDb.run(clubId, async (em) => {
    const put = (table: string, row: Row): Promise<void> => insertRow(em, table, row);
    await insertAircraft(em, fleet);
    await put(
      'aircraft_models',
      fleetRows(fleet).aircraft_models({ id: ids.otherModelId, make_model: 'Wrenfield Sparrow 3' }),
    );
    for (const id of [ids.learnerId, ids.teacherId, ids.otherId])
      await put('members', {
        ...{ club_id: clubId, id, name: 'Wren', email: `${id}@larkfield.example` },
        ...{ standing_since: '2026-01-01', membership_from: '2026-01-01' },
      });
    await put('differences', fleetRows(fleet).differences({ id: ids.differenceId }));
    const requirement = rows.checkout_requirements;
    await put(
      'checkout_requirements',
      requirement({ id: ids.glass, kind: 'equipment', condition: null, equipment_group: 'glass-panel' }),
    );
    await put('checkout_requirements', requirement({ id: ids.night, condition: 'night' }));
    await put('checkout_requirements', requirement({ id: ids.field, condition: 'short-field' }));
    await put('checkout_instructors', rows.checkout_instructors({ member_id: ids.teacherId }));
    const version = (id: string, requirement_id: string, number: number, more: Row) =>
      put('checkout_versions', rows.checkout_versions({ id, requirement_id, number, ...more }));
    await version(ids.glassVersion, ids.glass, 1, {
      ...rows.published,
      quiz_questions: 1,
      quiz_pass_percent: 80,
    });
    await version(ids.nightDraft, ids.night, 1, {});
    await version(ids.fieldOld, ids.field, 1, rows.published);
    await version(ids.fieldVersion, ids.field, 2, rows.published);
    const item = (id: string, version_id: string, title: string) =>
      put('checkout_items', rows.checkout_items({ id, version_id, position: 1, title }));
    await item(ids.glassItem, ids.glassVersion, 'Screens');
    await item(ids.nightItem, ids.nightDraft, 'Night landing');
    await item(ids.fieldOldItem, ids.fieldOld, 'Short landing');
    await item(ids.fieldItem, ids.fieldVersion, 'Shorter landing');
    await put('checkout_prerequisites', rows.checkout_prerequisites({ requirement_id: ids.glass }));
    await put('checkout_transfers', rows.checkout_transfers({ model_id: modelId }));
    const mark = rows.checkout_marks;
    await put('checkout_marks', mark({ id: ids.signedMark }));
    await put('checkout_marks', mark({ id: ids.correctedMark }));
    await put(
      'checkout_marks',
      mark({ id: ids.withdrawnMark, corrects: ids.correctedMark, because: 'Another day', withdraws: true }),
    );
    await put('quiz_questions', rows.quiz_questions({ id: ids.question, state: 'published' }));
    await put('quiz_questions', rows.quiz_questions({ id: ids.draftQuestion }));
    await put('quiz_attempts', rows.quiz_attempts({ id: ids.handedIn, member_id: ids.learnerId }));
    await put(
      'quiz_drawn',
      rows.quiz_drawn({ attempt_id: ids.handedIn, question_id: ids.question, position: 1 }),
    );
    await put('quiz_results', rows.quiz_results({ attempt_id: ids.handedIn }));
    await put('quiz_attempts', rows.quiz_attempts({ id: ids.open, member_id: ids.teacherId }));
    await put('quiz_drawn', rows.quiz_drawn({ question_id: ids.question, position: 1 }));
  });
  return ids;
}
