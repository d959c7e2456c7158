import { defineRule } from '../../engine/rule.js';
import { UnknownFact } from '../../engine/unknown.js';

/**
 * Keeps the Canadian pack from saying yes by omission. What the pack holds is judged and explained; what it lacks is named
 * here, and an unknown under law is never a yes. Since the pack holds the pilot’s side, law.canada.airworthiness and law.canada.operations stand here.
 */
export const canadaPackComplete = defineRule({
  id: 'law.canada.pack_complete',
  title: 'Canadian law held here',
  weight: 'law',
  binds: 'club',
  reads: [],
  parameters: [],
  branches: {},
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Canadian Aviation Regulations, SOR/96-433',
        status: 'from memory',
        reading: 'A pack that does not hold the law cannot say that the law is met.',
      },
      judge() {
        throw new UnknownFact(
          'law.canada',
          'of Canadian law only the recency of section 401.05 is held here; licences and ratings, medical validity, ' +
            'airworthiness and maintenance, equipment, fuel and weather minima are not',
        );
      },
    },
  ],
});
