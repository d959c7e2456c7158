import { defineProblems } from '../../platform/problems/problem-catalogue.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import type { WorkOrder, WorkState } from './work-order.entity.js';

defineProblems(
  {
    code: 'work-not-in-that-state',
    status: 409,
    title: 'Not a step the work can take now',
    detail:
      'Work goes from planned to in work to signed, or is called off before it begins. Read the work order again.',
  },
  {
    code: 'signature-not-enough',
    status: 422,
    title: 'Somebody else has to sign',
    detail:
      'What is on record of the signer does not cover this work. Name another signer, or leave the line undone.',
  },
);

const WORDS: Record<WorkState, string> = {
  planned: 'planned',
  'in-work': 'in work',
  signed: 'signed',
  cancelled: 'called off',
};

/** 409: it is in another state. */
export const notInState = ({ title, state }: WorkOrder, wanted: readonly WorkState[]): ProblemException =>
  new ProblemException('work-not-in-that-state', {
    detail: `“${title}” is ${WORDS[state]}; this is for work that is ${wanted.map((one) => WORDS[one]).join(' or ')}.`,
  });

/** 422: the signer's record does not cover it. */
export const signatureNotEnough = (field: string, detail: string): ProblemException =>
  new ProblemException('signature-not-enough', { field, detail });
