import { defineParameter, type Parameter, type ParameterValue } from '../parameter.js';

/**
 * Declares a parameter that a club sets for itself. Its one declared value is what a new club starts with; from then on
 * the club's own dated policy rows count (see packs/club/starting-policy.ts).
 */
export function clubParameter<T extends ParameterValue>(of: {
  id: `club.${string}`;
  title: string;
  unit: Parameter['unit'];
  start: T;
  /** Section of the club's handbook. */
  section: string;
}): Parameter<T> {
  return defineParameter({
    id: of.id,
    title: of.title,
    unit: of.unit,
    values: [{ from: null, value: of.start, reference: `Club handbook, section ${of.section}` }],
    checkedOn: '2026-11-25',
    status: 'club paper',
    recheckAfterMonths: 12,
  });
}
