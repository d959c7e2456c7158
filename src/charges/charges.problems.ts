import { defineProblems } from '../platform/problems/problem-catalogue.js';
import { ProblemException } from '../platform/problems/problem-exception.js';
import type { Missing } from './flights/charge-lines.js';

defineProblems(
  {
    code: 'own-ledger',
    status: 403,
    title: 'Your own account',
    detail: 'Nobody enters on their own account what was received or taken off. Ask another administrator.',
  },
  {
    code: 'currency-not-set',
    status: 409,
    title: 'No currency is set',
    detail: 'Set the policy club.charges.currency to a code of ISO 4217, such as USD.',
  },
  {
    code: 'charge-not-possible',
    status: 422,
    title: 'The flight cannot be charged yet',
    detail: 'Something it is charged by is not on record. Enter it and charge again.',
  },
  {
    code: 'period-too-long',
    status: 422,
    title: 'The period is too long, or ends before it begins',
    detail: 'Ask for a year at a time, the first day before the last.',
  },
);

const MISSING: Record<Missing, [field: string, detail: string]> = {
  hobbs: ['hobbsH', 'The aircraft is charged by its Hobbs meter. Give the hours it ran.'],
  tachometer: ['tachH', 'The aircraft is charged by its tachometer. Give the hours it ran.'],
  'instruction-minutes': [
    'instructionMinutes',
    'An instructor was aboard. Give the minutes of instruction, 0 where none was given.',
  ],
  'instruction-rate': [
    'instructorId',
    'No rate of this instructor holds on that day. Enter one; 0 charges nothing.',
  ],
  'aircraft-rate': [
    'aircraftId',
    'No rate of this aircraft holds on that day. Enter one; 0 charges nothing.',
  ],
};

/** What to do about what is missing. */
export const missingSays = (missing: Missing): string => MISSING[missing][1];

/** 422: something the charge hangs on is not on record. */
export const chargeNotPossible = (missing: Missing): ProblemException =>
  new ProblemException('charge-not-possible', { field: MISSING[missing][0], detail: MISSING[missing][1] });
