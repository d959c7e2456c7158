import type { AircraftType } from '../../../facts/aircraft.js';
import type { InstructorFact } from '../../../facts/person.js';

/** What an instructor may teach in, as the club records it. */
export type TaughtIn = InstructorFact['ratings'][number];

/** The instructor rating for the category and class, or null when none is known. */
export function ratingToTeach(type: Pick<AircraftType, 'category' | 'class'>): TaughtIn | null {
  if (type.category === 'airplane')
    return type.class.startsWith('multi-engine') ? 'airplane-multiengine' : 'airplane-single-engine';
  if (type.category === 'rotorcraft') return type.class === 'helicopter' ? 'rotorcraft-helicopter' : null;
  return type.category === 'glider' ? 'glider' : null;
}
