import type { EntityManager } from 'typeorm';
import { defineProblems } from '../platform/problems/problem-catalogue.js';
import { ProblemException } from '../platform/problems/problem-exception.js';
import type { LocalDate } from '../rules/calendar/dates.js';
import type { CheckoutDto } from './checkouts.dto.js';

defineProblems(
  {
    code: 'own-checkout',
    status: 403,
    title: 'Your own checkout',
    detail: 'Nobody signs their own checkout or annual check. Fly with another instructor of the club.',
  },
  {
    code: 'checkout-shape',
    status: 422,
    title: 'Checkout not clear',
    detail:
      'A checkout names what it is for: the model, the aircraft, the equipment group, the condition; an annual check nothing.',
  },
  {
    code: 'checkout-not-complete',
    status: 409,
    title: 'Something is left to do',
    detail: 'The club has laid down what this checkout asks for, and not all of it is there yet.',
  },
  {
    code: 'checkout-void-already',
    status: 409,
    title: 'Taken back already',
    detail: 'This checkout has been taken back before. Sign a new one if it is meant to stand.',
  },
);

const refuse = (field: string, detail: string): never => {
  throw new ProblemException('checkout-shape', { field, detail });
};

/** Whether the sign-off says what its kind needs, of things the club has, on a day that has come. @throws 422 */
export async function assertClear(
  em: EntityManager,
  clubId: string,
  draft: CheckoutDto,
  today: LocalDate,
): Promise<void> {
  const { modelId, aircraftId, signedOn, expiresOn } = draft;
  assertShape(draft);
  if (signedOn > today)
    refuse('signedOn', `A checkout is signed after the flight, not for a day to come (today is ${today}).`);
  if (expiresOn && expiresOn < signedOn)
    refuse('expiresOn', 'A checkout ends on or after the day it was signed.');
  if (modelId && !(await exists(em, 'aircraft_models', clubId, modelId)))
    refuse('modelId', 'The club has no such model.');
  if (aircraftId && !(await exists(em, 'aircraft', clubId, aircraftId)))
    refuse('aircraftId', 'The club has no such aircraft.');
}

/** What each kind names, and what it is called in a refusal. */
const NAMES: [
  field: 'modelId' | 'aircraftId' | 'equipmentGroup' | 'condition',
  kind: CheckoutDto['kind'],
  what: string,
][] = [
  ['modelId', 'model', 'model checkout'],
  ['aircraftId', 'differences', 'differences checkout'],
  ['equipmentGroup', 'equipment', 'checkout on equipment'],
  ['condition', 'condition', 'checkout for a condition'],
];
const THINGS = {
  modelId: 'model',
  aircraftId: 'aircraft',
  equipmentGroup: 'equipment group',
  condition: 'condition',
};

function assertShape(draft: CheckoutDto): void {
  for (const [field, kind, what] of NAMES) {
    const given = draft[field] !== null && draft[field] !== undefined;
    if (draft.kind === kind && !given) refuse(field, `A ${what} names the ${THINGS[field]}.`);
    if (draft.kind !== kind && given) refuse(field, `Only a ${what} names the ${THINGS[field]}.`);
  }
}

async function exists(
  em: EntityManager,
  table: 'aircraft' | 'aircraft_models',
  clubId: string,
  id: string,
): Promise<boolean> {
  const rows = await em.query<unknown[]>(`SELECT 1 FROM ${table} WHERE club_id = $1 AND id = $2`, [
    clubId,
    id,
  ]);
  return rows.length > 0;
}
