import { defineRule, type Citation } from '../../../engine/rule.js';
import { UnknownFact } from '../../../engine/unknown.js';

/**
 * Stands for a country's rules about the conduct of the flight (weather, fuel, airspace), which a pack does not hold.
 * The pilot in command settles them on the day, so they are a condition of every flight.
 */
export function operatingRules(of: {
  id: string;
  title: string;
  citation: Citation;
  /** What is not held; completes 'Cannot tell: ...'. */
  missing: string;
  condition: string;
}) {
  return defineRule({
    id: of.id,
    title: of.title,
    weight: 'law',
    binds: 'flight',
    settledAt: 'departure',
    whenUnknown: of.condition,
    reads: [],
    parameters: [],
    branches: {},
    bodies: [
      {
        version: 1,
        from: null,
        to: null,
        citation: of.citation,
        judge() {
          throw new UnknownFact(of.id, of.missing);
        },
      },
    ],
  });
}
