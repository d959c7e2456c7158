import { defineRule, type Citation } from '../../../engine/rule.js';
import { UnknownFact } from '../../../engine/unknown.js';
import { KEPT_UNDER } from '../../../parameters/club/airworthiness.js';

/** The law of a country about its aircraft, which a pack does not hold. */
export interface AircraftLaw {
  id: string;
  title: string;
  citation: Citation;
  /** Parameter with the first day of the law that the rest of the pack holds; before it nothing is held. */
  heldFrom: string;
  /** What is to be looked at before departure; completes 'Check before the flight ...'. */
  toCheck: string;
}

/**
 * Stands for the law about aircraft that a pack does not hold. Without a paper that an officer of the club recorded it
 * cannot be told, and that is never a yes; with one it stays a condition that the pilot settles on the day. It never
 * gives a plain yes.
 */
export function keptAirworthyRule(of: AircraftLaw) {
  return defineRule({
    id: of.id,
    title: of.title,
    weight: 'law',
    binds: 'aircraft',
    reads: [],
    parameters: [KEPT_UNDER, of.heldFrom],
    branches: {
      kept: { status: 'met', says: 'Not judged here; the club keeps it under: {paper}.' },
    },
    bodies: [
      {
        version: 1,
        from: null,
        to: null,
        citation: of.citation,
        judge(_f, moment, p, take) {
          const from = p.text(of.heldFrom);
          if (!moment.startsOnOrAfter(from))
            throw new UnknownFact(of.id, `the law of a flight before ${from} is not held here`);
          const paper = p.text(KEPT_UNDER).trim().replace(/\.+$/, '');
          if (paper === '')
            throw new UnknownFact(
              KEPT_UNDER,
              'the law about the aircraft is not held here, and the policy of the club names no paper under which ' +
                'airworthiness, maintenance and equipment are kept',
            );
          const condition = `Check before the flight ${of.toCheck}; the club keeps them under: ${paper}.`;
          return take('kept', { paper }, { conditions: [condition] });
        },
      },
    ],
  });
}
