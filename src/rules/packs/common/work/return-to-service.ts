import { defineRule } from '../../../engine/rule.js';
import type { Moment } from '../../../engine/moment.js';
import type { Remedy } from '../../../engine/remedy.js';
import type { WorkFact } from '../../../facts/aircraft.js';
import { dayAndClock } from '../../../explain/shown/shown.js';
import { evidenceOf, inOrder, namesOf } from './work.js';

/**
 * 14 CFR 91.407(a): nobody may fly an aircraft that was worked on until somebody authorised by 43.7 has approved it for return to
 * service and the entry of 43.9 or 43.11 is made. A flight after the day the shop means to give it back may be booked; that it was
 * signed by then is a condition.
 */
export const returnToService = defineRule({
  id: 'work.return_to_service',
  title: 'Return to service after work',
  weight: 'law',
  binds: 'aircraft',
  reads: ['aircraft.work'],
  parameters: [],
  branches: {
    'none-open': { status: 'met', says: 'No work on the aircraft is open.' },
    'back-by-then': { status: 'met', says: 'In the shop for {work}, meant to be back by {back}.' },
    'in-work': {
      status: 'short',
      says: 'In the shop for {work}: not approved for return to service.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.407(a), 43.5, 43.7, 43.9, 43.11',
        status: 'from memory',
        reading:
          'Work counts from the time it is recorded as begun; the signature as entered, whoever holds what certificate.',
      },
      judge(f, moment, _p, take) {
        const open = inOrder(f.get('aircraft.work')).filter((work) => !isSigned(work, moment));
        if (open.length === 0) return take('none-open');
        const counted = evidenceOf(open, moment);
        const out = open.filter(({ backAt }) => backAt === null || !moment.departsAtOrAfter(backAt));
        if (out.length === 0) {
          const back = open.map(({ backAt }) => backAt!).sort();
          return take(
            'back-by-then',
            { work: namesOf(open), back: dayAndClock(back.at(-1)!, moment.zone) },
            {
              counted,
              conditions: open.map(
                ({ title }) =>
                  `Before the flight see in the maintenance record that the aircraft was approved for return to service after “${title}”.`,
              ),
            },
          );
        }
        return take('in-work', { work: namesOf(out) }, { counted, remedies: () => signWork(open, moment) });
      },
    },
  ],
});

const isSigned = ({ signedAt }: WorkFact, moment: Moment): boolean =>
  signedAt !== null && moment.departsAtOrAfter(signedAt);

/** Has the work finished and signed. */
function signWork(work: readonly WorkFact[], moment: Moment): Remedy[] {
  const now = moment.hoursFromKnowledge(0);
  if (!moment.departsAtOrAfter(now)) return [];
  return [
    {
      act: 'sign-work',
      title: `Have finished and signed: ${work.map(({ title }) => `“${title}”`).join(', ')}.`,
      by: 'mechanic',
      effects: work.map(({ id }) => ({
        op: 'amend' as const,
        fact: 'aircraft.work' as const,
        id,
        fields: { state: 'signed', signedAt: now },
      })),
    },
  ];
}
