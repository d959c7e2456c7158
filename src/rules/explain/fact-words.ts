/** What the facts are called, for people: 'the pilot’s log', 'the aircraft’s meter readings'. */
import type { AircraftFacts } from '../facts/aircraft.js';
import type { FactKey, Role } from '../facts/keys.js';
import type { PersonFacts } from '../facts/person.js';

type PersonSubject = Exclude<keyof PersonFacts, 'id' | 'name'>;
type AircraftSubject = Exclude<keyof AircraftFacts, 'id'>;
/** What a fact is about, whoever's it is. */
export type Subject = PersonSubject | AircraftSubject;

/** A subject's name, and what one record of it is called. */
export interface SubjectWords {
  name: string;
  record: string;
}

const PERSON: Record<PersonSubject, SubjectWords> = {
  birthDate: { name: 'date of birth', record: 'date of birth' },
  certificates: { name: 'certificates and ratings', record: 'pilot certificate' },
  instructor: { name: 'instructor certificates', record: 'instructor certificate' },
  medicals: { name: 'medical certificates', record: 'medical certificate' },
  basicMed: { name: 'BasicMed papers', record: 'BasicMed papers' },
  reviews: { name: 'flight reviews and checks', record: 'review or check' },
  endorsements: { name: 'endorsements', record: 'endorsement' },
  ratings: { name: 'ratings with an end', record: 'rating' },
  log: { name: 'log', record: 'log entry' },
  logBefore: { name: 'earlier flying', record: 'sum of earlier flying' },
  checkouts: { name: 'club sign-offs', record: 'club sign-off' },
  standing: { name: 'standing with the club', record: 'membership record' },
  commitments: { name: 'calendar', record: 'booking' },
  checks: { name: 'checks of identity', record: 'check of identity' },
  unpaid: { name: 'unpaid charges', record: 'unpaid charge' },
  unverified: { name: 'papers that no officer has verified yet', record: 'unverified paper' },
  teachingHours: { name: 'teaching hours', record: 'set of teaching hours' },
  limits: { name: 'limits beyond the law', record: 'set of limits' },
};

const AIRCRAFT: Record<AircraftSubject, SubjectWords> = {
  type: { name: 'type and data', record: 'aircraft record' },
  use: { name: 'use by the club', record: 'aircraft record' },
  meters: { name: 'meter readings', record: 'meter reading' },
  items: { name: 'inspections and maintenance items', record: 'maintenance item' },
  registration: { name: 'registration', record: 'registration certificate' },
  equipment: { name: 'equipment', record: 'piece of equipment' },
  squawks: { name: 'open squawks', record: 'squawk' },
  permits: { name: 'special flight permits', record: 'special flight permit' },
  reservations: { name: 'bookings', record: 'booking' },
  differences: { name: 'changes of equipment', record: 'change of equipment' },
  work: { name: 'work in hand', record: 'piece of work' },
  weighing: { name: 'empty weight', record: 'weighing' },
  loading: { name: 'loading sheet', record: 'loading sheet' },
  insurance: { name: 'insurance terms', record: 'insurance terms' },
  performance: { name: 'take-off and landing tables', record: 'performance sheet' },
};

const WHOSE: Record<Role | 'aircraft', string> = {
  pic: 'the pilot’s',
  member: 'the member’s',
  instructor: 'the instructor’s',
  aircraft: 'the aircraft’s',
};

/** The words of a subject. */
export function subjectWords(key: FactKey): SubjectWords {
  const [owner, subject] = key.split('.') as [keyof typeof WHOSE, string];
  return owner === 'aircraft' ? AIRCRAFT[subject as AircraftSubject] : PERSON[subject as PersonSubject];
}

/** A fact's name: 'the pilot’s log'. The pilot is the pilot in command, whoever that is on the flight. */
export function factWords(key: FactKey): string {
  const owner = key.split('.')[0] as keyof typeof WHOSE;
  return `${WHOSE[owner]} ${subjectWords(key).name}`;
}
