import type { Instant, PilotMinimums } from '../../rules/index.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { Person } from '../people/person.js';
import type { InsuranceNamedPilotRow, InsuranceTermsRow } from '../rows.js';
import type { When } from '../when.js';
import { aircraftBy, type AircraftKey } from './aircraft.js';

const NOTHING: PilotMinimums = {
  ...{ leastLevel: null, instrumentRating: false, leastAgeYears: null, mostAgeYears: null },
  ...{ totalTenths: null, classTenths: null, retractableTenths: null, tailwheelTenths: null },
  ...{ modelTenths: null, recentTenths: null, recentDays: null },
  ...{ checkoutInModel: false, dualInModelTenths: null, reviewMonths: null },
};

/** The two aircraft whose policies the club has entered; the instructors are named, others have to meet what is asked. */
const POLICIES: readonly { aircraft: AircraftKey; asks: Partial<PilotMinimums> }[] = [
  { aircraft: 'lindle', asks: { leastLevel: 'private', checkoutInModel: true, modelTenths: 20 } },
  {
    aircraft: 'gemel',
    asks: { leastLevel: 'private', checkoutInModel: true, recentTenths: 30, recentDays: 365 },
  },
];

/** Invented terms that began some months ago and last for a year. */
export function insuranceRows(
  people: readonly Person[],
  when: When,
  recordedAt: Instant,
): { insurance_terms: InsuranceTermsRow[]; insurance_named_pilots: InsuranceNamedPilotRow[] } {
  const teachers = people.filter(({ story }) => story.instructor);
  const coordinator = people.find(({ story }) => story.roles?.includes('maintenance-coordinator'))!;
  const terms = POLICIES.map(({ aircraft, asks }): InsuranceTermsRow => ({
    ...{ club_id: DEMO_CLUB_ID, id: demoId('insurance', aircraft), aircraft_id: aircraftBy(aircraft).id },
    ...{
      source: 'Quill Mesa hull policy, pilot clause',
      recorded_by: coordinator.id,
      recorded_at: recordedAt,
    },
    ...{
      valid_from: when.daysAgo(200),
      valid_through: when.daysAgo(-165),
      minimums: { ...NOTHING, ...asks },
    },
  }));
  const named = terms.flatMap(({ club_id, id }) =>
    teachers.map((teacher) => ({ club_id, terms_id: id, member_id: teacher.id, recorded_at: recordedAt })),
  );
  return { insurance_terms: terms, insurance_named_pilots: named };
}
