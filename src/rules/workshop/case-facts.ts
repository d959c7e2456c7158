/** Holds what a case says of the flight, the people and the aircraft against complete example records. */
import { FLIGHT, HOME_FIELD } from './base-sheet.js';
import { conformingTime, looksLikeTime } from './case-times.js';
import { WORDS } from './case-words.js';
import * as records from './records.js';
import { object, onlyKeys, type Place, type Refuse } from './refuse.js';

/** Complete records that entries of a case are laid over, by subject. Lists hold any number of them. */
const PERSON_RECORDS: Record<string, object> = {
  certificates: records.CERTIFICATE,
  instructor: records.INSTRUCTOR,
  medicals: records.MEDICAL,
  basicMed: records.BASIC_MED,
  reviews: records.REVIEW,
  endorsements: records.ENDORSEMENT,
  ratings: records.LICENCE_RATING,
  log: records.LOG,
  logBefore: records.LOG_BEFORE,
  checkouts: records.CHECKOUT,
  standing: records.STANDING,
  commitments: records.COMMITMENT,
  unverified: records.UNVERIFIED,
  limits: records.LIMITS,
  checks: records.CHECK,
  unpaid: records.UNPAID,
  teachingHours: records.TEACHING_HOURS,
};
const AIRCRAFT_RECORDS: Record<string, object> = {
  type: records.AIRCRAFT_TYPE,
  use: records.USE,
  meters: records.METER,
  items: records.ITEM,
  registration: records.REGISTRATION,
  equipment: records.EQUIPMENT,
  squawks: records.SQUAWK,
  permits: records.PERMIT,
  reservations: records.RESERVATION,
  differences: records.DIFFERENCES,
  work: records.WORK,
  weighing: records.WEIGHING,
  loading: records.LOADING_SHEET,
  performance: records.PERFORMANCE,
  insurance: records.INSURANCE,
};

/** Subjects that are one record and not a list of them. */
const SINGLE = ['standing', 'type', 'use', 'logBefore', 'weighing', 'loading', 'performance'];

/** Records inside records, by subject and field. */
const INSIDE: Record<string, object> = {
  'certificates.ratings': records.RATING,
  'certificates.suspensions': records.SUSPENSION,
  'instructor.suspensions': records.SUSPENSION,
  'insurance.minimums': records.PILOT_MINIMUMS,
  'items.detail': records.ITEM_DETAIL,
  'logBefore.sums': records.LOG_SUM,
  'squawks.deferral': records.DEFERRAL,
  'flight.weather': records.WEATHER,
  'flight.destinationForecast': records.FORECAST,
  'flight.reports': records.REPORT,
  'flight.reports.observed': records.CONDITIONS,
  'flight.reports.observed.windVaries': { fromDeg: 180, toDeg: 240 },
  'flight.reports.periods': records.REPORT.periods[0]!,
  'flight.reports.periods.conditions': records.CONDITIONS,
  'flight.loading': records.LOADING,
  'flight.runways': records.RUNWAY_CHOICE,
  'loading.stations': records.STATION,
  'loading.envelopes': records.LOADING_SHEET.envelopes[0]!,
  'loading.envelopes.points': records.LOADING_SHEET.envelopes[0]!.points[0]!,
  'performance.takeoff': records.PERFORMANCE.takeoff,
  'performance.landing': records.PERFORMANCE.landing,
  'performance.takeoff.factors': records.PERFORMANCE.takeoff.factors,
  'performance.landing.factors': records.PERFORMANCE.landing.factors,
  'performance.takeoff.tables': records.PERFORMANCE.takeoff.tables[0]!,
  'performance.landing.tables': records.PERFORMANCE.landing.tables[0]!,
  'flight.route': FLIGHT.route[0]!,
  'flight.route.runways': FLIGHT.route[0]!.runways[0]!,
};

const ROLES = ['pic', 'member', 'instructor'];

/** 'pic.log', 'aircraft.items', ... */
export function isFactName(key: string): boolean {
  const [whose, subject, ...more] = key.split('.');
  if (more.length > 0 || whose === undefined || subject === undefined) return false;
  if (whose === 'aircraft') return subject in AIRCRAFT_RECORDS;
  return ROLES.includes(whose) && (subject in PERSON_RECORDS || subject === 'birthDate');
}

/** The complete example of a fact's record. */
export function recordOf(key: string): object {
  const subject = key.split('.')[1]!;
  return (key.startsWith('aircraft.') ? AIRCRAFT_RECORDS : PERSON_RECORDS)[subject] ?? {};
}

/** A fact's value as written in a case, its times in their usual form. */
export function conformingFact(key: string, value: unknown, place: Place, refuse: Refuse): unknown {
  const subject = key.split('.')[1]!;
  if (subject === 'birthDate') return conformingTime(value, 'date', place, refuse);
  const template = recordOf(key);
  if (SINGLE.includes(subject)) return conforming(value, template, subject, place, refuse);
  if (!Array.isArray(value)) return refuse(place, `${key} is a list, [] when there is none`);
  return value.map((entry, index) => conforming(entry, template, subject, [...place, index], refuse));
}

/** What a case says of the flight; its times come from `asOf` and `durationMinutes`. */
export function conformingFlight(value: unknown, place: Place, refuse: Refuse): Record<string, unknown> {
  const { departs: _departs, arrives: _arrives, ...template } = FLIGHT;
  // The base flight has no reports at hand, and sheets stored before they were kept have no place for them.
  return conforming(value, { ...template, reports: null }, 'flight', place, refuse);
}

/** Rows of club policy; or values by their parameters, which then hold from long before. */
export function conformingPolicy(value: unknown, place: Place, refuse: Refuse): unknown {
  if (!Array.isArray(value))
    return Object.entries(object(value, place, refuse)).map(([id, set]) => {
      if (typeof set === 'object' && set !== null)
        refuse([...place, id], 'a value of policy is a single one');
      return { id, from: '2020-01-01', value: set, reference: 'test' };
    });
  return value.map((written: unknown, index) => {
    const row = object(written, [...place, index], refuse);
    onlyKeys(row, ['id', 'from', 'value', 'reference'], [...place, index], refuse);
    for (const key of ['id', 'from', 'reference'])
      if (typeof row[key] !== 'string') refuse([...place, index], `a row of policy has a ${key}`);
    if (!('value' in row)) refuse([...place, index], 'a row of policy has a value');
    return { ...row, from: conformingTime(row.from, 'date', [...place, index, 'from'], refuse) };
  });
}

function conforming(
  value: unknown,
  template: object,
  subject: string,
  place: Place,
  refuse: Refuse,
): Record<string, unknown> {
  const record = object(value, place, refuse);
  onlyKeys(record, Object.keys(template), place, refuse);
  return Object.fromEntries(
    Object.entries(record).map(([key, field]) => [
      key,
      conformingField(
        field,
        (template as Record<string, unknown>)[key],
        `${subject}.${key}`,
        [...place, key],
        refuse,
      ),
    ]),
  );
}

/** One field: absent (null), records of its own, a date or time, a word from a list, or of the template's kind. */
function conformingField(
  field: unknown,
  template: unknown,
  name: string,
  place: Place,
  refuse: Refuse,
): unknown {
  if (field === null) return field;
  const inside = INSIDE[name];
  if (inside) {
    // What is entered of an item may be anything; what is told of a flight is laid over the base sheet later, but an
    // airfield over the home field, and a report over a fair one.
    const laidOver = name.startsWith('flight.') && !/^flight\.(?:route|reports)/.test(name);
    const bare = name === 'items.detail' || laidOver;
    const one = (entry: unknown, at: Place): unknown => {
      if (name === 'flight.route' && entry === 'home') return HOME_FIELD;
      return { ...(bare ? {} : inside), ...conforming(entry, inside, name, at, refuse) };
    };
    if (Array.isArray(field)) return field.map((entry, index) => one(entry, [...place, index]));
    return Array.isArray(template) ? refuse(place, `${name} is a list`) : one(field, place);
  }
  const key = name.split('.').at(-1)!;
  if (name === 'logBefore.through') return conformingTime(field, 'instant', place, refuse);
  if (/(^|[a-z])(At)$|^(from|to)$/.test(key)) return conformingTime(field, 'date or instant', place, refuse);
  if (/^(on|since|through)$|(On|From|Through)$/.test(key) && typeof template !== 'number')
    return conformingTime(field, 'date', place, refuse);
  const words = WORDS[name];
  for (const word of Array.isArray(field) ? field : [field])
    if (words && !words.includes(word as string))
      refuse(place, `${String(word)} is not one of ${words.join(', ')}`);
  if (template !== null && template !== undefined) {
    const kind = Array.isArray(template) ? 'list' : typeof template;
    if ((Array.isArray(field) ? 'list' : typeof field) !== kind) refuse(place, `${key} should be a ${kind}`);
  }
  return typeof field === 'string' && looksLikeTime(field)
    ? conformingTime(field, 'date or instant', place, refuse)
    : field;
}
