/** Every fact as people may read it: each subject's records, a line each. */
import type { AircraftType, AircraftUse } from '../../facts/aircraft.js';
import type { FactKey } from '../../facts/keys.js';
import type { Subject } from '../fact-words.js';
import * as aircraft from './aircraft.js';
import { showLimits } from './limits.js';
import { showInsurance } from './insurance.js';
import * as loads from './loading.js';
import { showTeachingHours } from './teaching-hours.js';
import * as person from './person.js';
import { parts, type RecordShown, type Show } from './shown.js';
import { fieldSays, TYPE_MISSING, TYPE_WORDS, USE_WORDS, type FieldWords } from './type-fields.js';

export { parts, type RecordShown } from './shown.js';

/** Shows one record by the fields that were read of it. */
type ShowFields = (value: never, fields: ReadonlySet<string>) => RecordShown[];

const LISTS: Partial<Record<Subject, Show<never>>> = {
  birthDate: person.showBirthDate,
  certificates: person.showCertificates,
  instructor: person.showInstructor,
  medicals: person.showMedicals,
  basicMed: person.showBasicMed,
  reviews: person.showReviews,
  endorsements: person.showEndorsements,
  ratings: person.showRatings,
  log: person.showLog,
  logBefore: person.showLogBefore,
  checkouts: person.showCheckouts,
  standing: person.showStanding,
  commitments: person.showCommitments,
  unpaid: person.showUnpaid,
  unverified: person.showUnverified,
  limits: showLimits,
  checks: person.showChecks,
  teachingHours: showTeachingHours,
  meters: aircraft.showMeters,
  items: aircraft.showItems,
  registration: aircraft.showRegistrations,
  equipment: aircraft.showEquipment,
  squawks: aircraft.showSquawks,
  permits: aircraft.showPermits,
  reservations: aircraft.showReservations,
  differences: aircraft.showDifferences,
  work: aircraft.showWork,
  insurance: showInsurance,
  weighing: loads.showWeighing,
  loading: loads.showLoading,
  performance: loads.showPerformance,
};

const byFields =
  <T extends object>(words: FieldWords<T>, missing: Partial<Record<keyof T, string>>) =>
  (value: T, fields: ReadonlySet<string>): RecordShown[] => {
    const read = (Object.keys(words) as (keyof T & string)[]).filter((field) => fields.has(field));
    const says = parts(...read.map((field) => fieldSays(words, missing, field, value[field])));
    return says === '' ? [] : [{ id: null, on: null, says }];
  };

const FIELDS: Partial<Record<Subject, ShowFields>> = {
  type: byFields<AircraftType>(TYPE_WORDS, TYPE_MISSING) as ShowFields,
  use: byFields<AircraftUse>(USE_WORDS, {}) as ShowFields,
};

/**
 * The records behind a fact's value, newest first, undated ones last. Of a type and a use only the fields named are told.
 */
export function showFact(
  key: FactKey,
  value: unknown,
  of: { fields: ReadonlySet<string>; zone: string },
): RecordShown[] {
  const subject = key.split('.')[1] as Subject;
  const fields = FIELDS[subject];
  if (fields) return fields(value as never, of.fields);
  const records = LISTS[subject]!(value as never, of.zone);
  return [...records].sort((a, b) =>
    (a.on ?? '') < (b.on ?? '') ? 1 : (a.on ?? '') > (b.on ?? '') ? -1 : 0,
  );
}
