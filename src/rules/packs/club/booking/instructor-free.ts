import { defineRule } from '../../../engine/rule.js';
import { countedCommitment, inWords, overlapping } from './commitments.js';

/** The instructor named for the flight is not promised elsewhere at the same time. */
export const instructorFree = defineRule({
  id: 'calendar.instructor_free',
  title: "The instructor's calendar",
  weight: 'club',
  neverOverridden: true,
  binds: 'instructor',
  reads: ['instructor.commitments'],
  parameters: [],
  branches: {
    nobody: { status: 'not-applicable', says: 'No instructor is named for the flight.' },
    free: { status: 'met', says: 'The instructor has nothing else at that time.' },
    busy: { status: 'short', says: 'The instructor is already down for {what} from {from} until {to}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: { text: 'Club handbook, section 4.3', status: 'club paper' },
      judge(f, moment, _p, take) {
        if (f.flight.instructorId === null) return take('nobody');
        const clashes = overlapping(f.get('instructor.commitments'), moment);
        const first = clashes[0];
        if (!first) return take('free');
        return take('busy', inWords(first, moment.zone), {
          counted: clashes.map((one) => countedCommitment(one, moment.zone)),
          remedies: () => [
            {
              act: 'name-another-instructor',
              title: 'Ask for another instructor.',
              by: 'member',
              effects: [{ op: 'flight', fields: { instructorId: null } }],
            },
          ],
        });
      },
    },
  ],
});
