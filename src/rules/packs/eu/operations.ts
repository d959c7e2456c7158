import { operatingRules } from '../common/held/operating-rules.js';

/** Rules of the air and of non-commercial operation, which this pack does not hold. */
export const operations = operatingRules({
  id: 'law.easa.operations',
  title: 'Conduct of the flight under European law',
  citation: {
    text: 'Regulation (EU) No 965/2012, NCO.OP; Regulation (EU) No 923/2012 (SERA)',
    status: 'from memory',
    reading: 'The pilot in command settles these before departure and in flight.',
  },
  missing: 'European minima for weather, fuel and heights, and rules for airspace, are not held here',
  condition:
    'Work out fuel and reserve (NCO.OP.125), visibility and distance from cloud (SERA.5001, SERA.5005), alternates, heights and airspace yourself.',
});
