import { defineRule } from '../../../engine/rule.js';

/** The club offers the aircraft for flying. */
export const aircraftInService = defineRule({
  id: 'aircraft.in_service',
  title: 'Aircraft in service',
  weight: 'club',
  neverOverridden: true,
  binds: 'aircraft',
  reads: ['aircraft.use'],
  parameters: [],
  branches: {
    'in-service': { status: 'met', says: 'The aircraft is in service.' },
    'out-of-service': { status: 'short', says: 'The club has taken the aircraft out of service.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: { text: 'Club handbook, fleet list', status: 'club paper' },
      judge(f, _moment, _p, take) {
        const use = f.get('aircraft.use');
        if (use.status === 'in-service') return take('in-service');
        return take(
          'out-of-service',
          {},
          {
            remedies: () => [
              {
                act: 'return-to-service',
                title: 'Put the aircraft back into service.',
                by: 'maintenance-coordinator',
                effects: [{ op: 'set', fact: 'aircraft.use', value: { ...use, status: 'in-service' } }],
              },
            ],
          },
        );
      },
    },
  ],
});
