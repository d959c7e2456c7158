import { addDays } from '../../../calendar/dates.js';
import { defineRule } from '../../../engine/rule.js';

/** Club rule: a suspended member does not fly as pilot in command on somebody else's booking either. */
export const pilotStanding = defineRule({
  id: 'club.pilot_standing',
  title: "The pilot in command's standing with the club",
  weight: 'club',
  binds: 'pilot',
  reads: ['pic.standing'],
  parameters: [],
  branches: {
    'own-booking': { status: 'not-applicable', says: 'The member who books is pilot in command.' },
    good: { status: 'met', says: 'The pilot in command is not suspended by the club{ahead}.' },
    suspended: { status: 'short', says: 'The pilot in command is suspended by the club since {since}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: { text: 'Club handbook, section 2.2', status: 'club paper' },
      judge(f, moment, _p, take) {
        if (f.crew.picId === f.flight.memberId) return take('own-booking');
        const standing = f.get('pic.standing');
        const { state, since } = standing;
        // A suspension that begins only after the flight is over does not touch it.
        if (state !== 'suspended') return take('good', { ahead: '' });
        if (moment.endsOnOrBefore(addDays(since, -1))) return take('good', { ahead: ` before ${since}` });
        return take(
          'suspended',
          { since },
          {
            remedies: () => [
              {
                act: 'lift-suspension-of-pilot',
                title: 'Ask an officer to lift the suspension of the pilot in command.',
                by: 'officer',
                effects: [{ op: 'set', fact: 'pic.standing', value: { ...standing, state: 'good' } }],
              },
            ],
          },
        );
      },
    },
  ],
});
