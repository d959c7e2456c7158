import { defineRule } from '../../../engine/rule.js';
import type { Moment } from '../../../engine/moment.js';
import type { Remedy } from '../../../engine/remedy.js';
import type { WorkFact } from '../../../facts/aircraft.js';
import { essentialCrewOnly, flyWithEssentialCrew } from '../permits/permit-flight.js';
import { evidenceOf, inOrder, namesOf } from './work.js';

/**
 * 14 CFR 91.407(b), (c): after work that may have changed how the aircraft flies or works in flight, nobody but crew is carried until
 * an appropriately rated pilot with at least a private pilot certificate has flown it, checked it and logged that; unless inspection
 * and ground tests show conclusively that nothing has changed.
 */
export const checkFlight = defineRule({
  id: 'work.check_flight',
  title: 'Check flight after work',
  weight: 'law',
  binds: 'aircraft',
  reads: ['aircraft.work'],
  parameters: [],
  branches: {
    'none-due': { status: 'met', says: 'No check flight is due after work.' },
    'crew-alone': {
      status: 'met',
      says: 'A check flight is due after {work}; nobody but required crew is on board.',
    },
    'carries-others': {
      status: 'short',
      says: 'A check flight is due after {work}; until it is made, nobody but required crew is carried.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.407(b), (c)',
        status: 'from memory',
        reading:
          'Strict: a learner under instruction is carried. Whether the work asks for a check flight is what whoever signed it recorded.',
      },
      judge(f, moment, _p, take) {
        const due = inOrder(f.get('aircraft.work')).filter((work) => isDue(work, moment));
        if (due.length === 0) return take('none-due');
        const values = { work: namesOf(due) };
        const counted = evidenceOf(due, moment);
        if (essentialCrewOnly(f.flight))
          return take('crew-alone', values, {
            counted,
            conditions: due.map(
              ({ title, checkFlightBecause }) =>
                `This flight is the check flight after “${title}” or comes before it (${checkFlightBecause}): fly it with at least a ` +
                'private pilot certificate and the ratings it takes, check the aircraft, and log the check in its records.',
            ),
          });
        return take('carries-others', values, {
          counted,
          remedies: () => [flyWithEssentialCrew, ...makeCheckFlight(due, moment)],
        });
      },
    },
  ],
});

const isDue = ({ checkFlightBecause, checkFlownAt }: WorkFact, moment: Moment): boolean =>
  checkFlightBecause !== null && (checkFlownAt === null || !moment.departsAtOrAfter(checkFlownAt));

/** Has the check flight made and logged; only where the work was signed, for until then nobody flies. */
function makeCheckFlight(work: readonly WorkFact[], moment: Moment): Remedy[] {
  const now = moment.hoursFromKnowledge(0);
  if (!moment.departsAtOrAfter(now)) return [];
  return [
    {
      act: 'fly-check-flight',
      title: `Have the check flight made and logged after ${namesOf(work)}.`,
      by: 'member',
      effects: work.map(({ id }) => ({
        op: 'amend' as const,
        fact: 'aircraft.work' as const,
        id,
        fields: { checkFlownAt: now },
      })),
    },
  ];
}
