import { defineProblems } from '../../platform/problems/problem-catalogue.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import type { SquawkState } from './squawk.entity.js';

defineProblems(
  {
    code: 'squawk-state',
    status: 409,
    title: 'Not from this state',
    detail: 'Read the squawk again and choose one of the steps open to it.',
  },
  {
    code: 'squawk-duplicate',
    status: 422,
    title: 'Not a duplicate that can be kept there',
    detail:
      'Choose an open squawk of the same aircraft that stops at least as much, or settle this one by itself.',
  },
  {
    code: 'deferral-not-allowed',
    status: 422,
    title: 'May not be deferred',
    detail:
      'Equipment the aircraft needs is repaired, not deferred (14 CFR 91.213(d)). Ground the aircraft until it is fixed.',
  },
  {
    code: 'deferral-step-missing',
    status: 422,
    title: 'A step is missing',
    detail: 'Do the step named first (14 CFR 91.213(d)), then defer.',
  },
);

const STEPS: Record<SquawkState, string> = {
  reported: 'report it anew',
  grounding: 'ground the aircraft',
  deferred: 'defer it',
  fixed: 'record the fix',
  'no-fault-found': 'record that no fault was found',
  duplicate: 'mark it as a duplicate',
};

/** 409: the state machine has no such step. */
export const stepNotOpen = (from: SquawkState, open: SquawkState[]): ProblemException => {
  const closed =
    'It is closed. Reopen it if it was closed wrongly; if the fault shows again, report a new squawk.';
  const choices = `You can ${open.map((state) => STEPS[state]).join(', or ')}.`;
  return new ProblemException('squawk-state', {
    detail: `The squawk is '${from}'. ${open.length === 0 ? closed : choices}`,
    extensions: { state: from },
  });
};

/** 422: a requirement forbids the deferral. */
export const deferralForbidden = (field: string, why: string): ProblemException =>
  new ProblemException('deferral-not-allowed', {
    field,
    detail: `${why}, so it is repaired and not deferred (14 CFR 91.213(d)(2)). Ground the aircraft until it is fixed.`,
  });

/** 422: a step was answered with no. */
export const stepMissing = (field: string, todo: string): ProblemException =>
  new ProblemException('deferral-step-missing', {
    field,
    detail: `${todo} (14 CFR 91.213(d)(3)), then defer.`,
  });

/** 409: only what is closed is reopened. */
export const notClosed = (state: SquawkState): ProblemException =>
  new ProblemException('squawk-state', {
    detail: `The squawk is '${state}', so it is open already. You can go on with it.`,
    extensions: { state },
  });

/** 422: closing it as a duplicate of that one would lose something. */
export const notADuplicateOf = (detail: string): ProblemException =>
  new ProblemException('squawk-duplicate', { field: 'ofSquawkId', detail });
