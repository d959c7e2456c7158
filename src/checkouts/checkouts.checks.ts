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
    detail: 'A model checkout names the model, a differences checkout the aircraft, an annual check neither.',
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
  const { kind, modelId, aircraftId, signedOn, expiresOn } = draft;
  if (kind === 'model' && !modelId) refuse('modelId', 'A model checkout names the model.');
  if (kind === 'differences' && !aircraftId)
    refuse('aircraftId', 'A differences checkout names the aircraft.');
  if (kind !== 'model' && modelId) refuse('modelId', 'Only a model checkout names a model.');
  if (kind !== 'differences' && aircraftId)
    refuse('aircraftId', 'Only a differences checkout names an aircraft.');
  if (signedOn > today)
    refuse('signedOn', `A checkout is signed after the flight, not for a day to come (today is ${today}).`);
  if (expiresOn && expiresOn < signedOn)
    refuse('expiresOn', 'A checkout ends on or after the day it was signed.');
  if (modelId && !(await exists(em, 'aircraft_models', clubId, modelId)))
    refuse('modelId', 'The club has no such model.');
  if (aircraftId && !(await exists(em, 'aircraft', clubId, aircraftId)))
    refuse('aircraftId', 'The club has no such aircraft.');
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
