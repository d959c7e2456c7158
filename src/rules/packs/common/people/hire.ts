import { defineRule, type Citation } from '../../../engine/rule.js';
import { UnknownFact } from '../../../engine/unknown.js';
import type { CertificateLevel } from '../../../facts/person.js';
import { FLY_WITHOUT_HIRE } from '../shared/flight-changes.js';
import { standingAmong } from './standing.js';

/**
 * Carriage for hire takes a commercial licence, and an operator's certificate with rules of its own. Those are not held:
 * where the licence would do, the rest cannot be told, which is never a yes.
 */
export function hireRule(of: {
  id: string;
  citation: Citation;
  levels: readonly CertificateLevel[];
  commercial: readonly CertificateLevel[];
  /** What the operator needs besides, not held here. */
  operator: string;
}) {
  return defineRule({
    id: of.id,
    title: 'Licence level for the flight',
    weight: 'law',
    binds: 'pilot',
    reads: ['pic.certificates'],
    parameters: [],
    branches: {
      'not-for-hire': { status: 'not-applicable', says: 'Nobody and nothing is carried for hire.' },
      'level-needed': {
        status: 'short',
        says: 'Carriage for hire needs a commercial or airline transport pilot licence, which is not on record in force.',
      },
    },
    bodies: [
      {
        version: 1,
        from: null,
        to: null,
        citation: of.citation,
        judge(f, moment, _p, take) {
          if (!f.flight.forHire) return take('not-for-hire');
          const { inForce } = standingAmong(of.levels, f.get('pic.certificates'), moment);
          if (!inForce.some(({ level }) => of.commercial.includes(level)))
            return take('level-needed', {}, { remedies: () => [FLY_WITHOUT_HIRE] });
          throw new UnknownFact('flight.forHire', `${of.operator} is not held here`);
        },
      },
    ],
  });
}
