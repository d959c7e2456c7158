import { operatingRules } from '../common/held/operating-rules.js';

/** Operating and flight rules (subpart 602), which this pack does not hold. */
export const operations = operatingRules({
  id: 'law.canada.operations',
  title: 'Conduct of the flight under Canadian law',
  citation: {
    text: 'CARs 602.88, 602.114, 602.115, 602.122',
    status: 'from memory',
    reading: 'The pilot in command settles these before departure and in flight.',
  },
  missing: 'Canadian minima for weather, fuel and heights, and rules for airspace, are not held here',
  condition:
    'Work out fuel and reserve (CARs 602.88), visibility and distance from cloud (602.114, 602.115), alternates, heights and airspace yourself.',
});
