import { defineRule } from '../../engine/rule.js';
import { UnknownFact } from '../../engine/unknown.js';

/**
 * Keeps the European pack from saying yes by omission. What the pack holds is judged and explained; what it lacks is named
 * here, and an unknown under law is never a yes. Since the pack holds the pilot’s side, law.easa.airworthiness and law.easa.operations stand here.
 */
export const easaPackComplete = defineRule({
  id: 'law.easa.pack_complete',
  title: 'European law held here',
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
        text: 'Regulations (EU) No 1178/2011, No 965/2012, No 1321/2014 and No 923/2012',
        status: 'from memory',
        reading: 'A pack that does not hold the law cannot say that the law is met.',
      },
      judge() {
        throw new UnknownFact(
          'law.easa',
          'of European law only passenger recency and medical validity are held here; ratings and their validity, ' +
            'training, airworthiness and maintenance, equipment, fuel and weather minima are not',
        );
      },
    },
  ],
});
