import { defineProblems } from '../../platform/problems/problem-catalogue.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import type { Parameter } from '../../rules/index.js';

defineProblems(
  {
    code: 'policy-parameter-unknown',
    status: 422,
    title: 'No such policy parameter',
    detail: 'Choose a parameter listed at GET /api/v1/policy/parameters.',
  },
  {
    code: 'policy-parameter-is-law',
    status: 422,
    title: 'Set by law',
    detail:
      'A club cannot change a number of the law. Choose a parameter listed at GET /api/v1/policy/parameters.',
  },
  {
    code: 'policy-value-type',
    status: 422,
    title: 'Value of the wrong type',
    detail: 'Give a value of the type that the definition of the parameter says.',
  },
  {
    code: 'policy-value-backdated',
    status: 422,
    title: 'Date lies in the past',
    detail: 'A value begins today or later: what was decided before rested on the policy of its day.',
  },
  {
    code: 'policy-value-in-force',
    status: 409,
    title: 'Value already in force',
    detail: 'Decisions may rest on this value, so it stays. Add a new value from today or later instead.',
  },
);

const field = 'parameterId';

export const parameterUnknown = (id: string): ProblemException =>
  new ProblemException('policy-parameter-unknown', {
    field,
    detail: `There is no policy parameter '${id}'. Choose one listed at GET /api/v1/policy/parameters.`,
  });

export const parameterIsLaw = ({ id, title }: Parameter): ProblemException =>
  new ProblemException('policy-parameter-is-law', {
    field,
    detail: `'${id}' (${title}) is a number of the law; a club cannot change it. Choose a parameter listed at GET /api/v1/policy/parameters.`,
  });

export const valueOfWrongType = ({ id, title, unit }: Parameter, wanted: string): ProblemException =>
  new ProblemException('policy-value-type', {
    field: 'value',
    detail: `'${id}' (${title}; ${unit}) takes ${wanted}, or null to end it.`,
  });

export const backdated = (validFrom: string, today: string): ProblemException =>
  new ProblemException('policy-value-backdated', {
    field: 'validFrom',
    detail:
      `${validFrom} lies in the past; today is ${today} in your club's zone. A value begins today or later: what was ` +
      'decided before rested on the policy of its day.',
  });

export const alreadyInForce = (validFrom: string): ProblemException =>
  new ProblemException('policy-value-in-force', {
    detail:
      `This value has held since ${validFrom} and decisions may rest on it, so it stays. Add a new value from a later day ` +
      'instead; tomorrow is the first one when today already has one.',
  });
