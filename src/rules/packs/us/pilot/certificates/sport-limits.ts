import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import { defineRule, type FactView, type Judgement, type Take } from '../../../../engine/rule.js';
import { need } from '../../../../engine/unknown.js';
import type { LocalDate } from '../../../../calendar/dates.js';
import { touchesNight } from '../../../../sky/nights.js';
import { downBeforeNight, flyByDay, NIGHT_PARAMETERS } from '../../../common/shared/by-day.js';
import { exercised, standingOf } from '../shared/certificates.js';
import { endorsementFor, getEndorsement } from '../../../common/people/endorsements.js';
import { curesOf, saysAll, type Shortfall } from '../../../common/people/shortfalls.js';
import {
  airspace,
  altitude,
  hireOrInstruments,
  together,
  tooManyPassengers,
  visibility,
  VISIBILITY_PARAMETERS,
  type Found,
} from './limits.js';
import { lightSportAircraft, sportAircraft } from './sport-aircraft.js';
import { examinedFor, SPORT_MEDICAL_PARAMETERS, sportMedical } from './sport-medical.js';

type Branch = 'not-sport' | 'within' | 'beyond';
type Reads =
  | 'pic.certificates'
  | 'pic.endorsements'
  | 'pic.medicals'
  | 'pic.basicMed'
  | 'pic.birthDate'
  | 'aircraft.type';

/**
 * 14 CFR 61.315, 61.316, 61.329, 61.331: what a sport pilot may fly, with whom, where and when, and on which medical
 * footing. Until 2025-10-22 the aircraft was the light-sport aircraft of 14 CFR 1.1 and the night was closed.
 */
export const sportLimits = defineRule({
  id: 'sport.limits',
  title: 'Limits of a sport pilot',
  weight: 'law',
  binds: 'pilot',
  reads: [
    'pic.certificates',
    'pic.endorsements',
    'pic.medicals',
    'pic.basicMed',
    'pic.birthDate',
    'aircraft.type',
  ],
  parameters: [
    'us.sport.passengers',
    'us.sport.altitude-ft-msl',
    'us.sport.altitude-ft-agl',
    'us.sport.visibility-sm',
    'us.sport.airplane-vs1-kcas',
    'us.sport.other-vs1-kcas',
    'us.sport.airplane-seats',
    'us.sport.other-seats',
    'us.sport.takeoff-lb',
    'us.sport.takeoff-water-lb',
    'us.sport.level-speed-kcas',
    ...SPORT_MEDICAL_PARAMETERS,
    ...NIGHT_PARAMETERS,
    ...VISIBILITY_PARAMETERS,
  ],
  branches: {
    'not-sport': {
      status: 'not-applicable',
      says: 'The pilot in command is not flying on a sport pilot certificate.',
    },
    within: { status: 'met', says: 'The flight is within the limits of a sport pilot, on a {medical}.' },
    beyond: { status: 'short', says: 'Beyond the limits of a sport pilot: {wrong}.' },
  },
  bodies: [
    body(1, '2004-09-01', '2025-10-22', '14 CFR 1.1 (light-sport aircraft), 61.23(c), 61.315', false),
    body(2, '2025-10-22', null, '14 CFR 61.23(c), 61.315, 61.316, 61.329, 61.331 (90 FR 35215)', true),
  ],
});

function body(version: number, from: LocalDate, to: LocalDate | null, text: string, amended: boolean) {
  return {
    version,
    from,
    to,
    citation: {
      text,
      status: 'seen' as const,
      reading:
        'A propeller that controls itself is not told apart from one the pilot controls, so the endorsement is asked for. The model-speed endorsements of 61.327, simplified flight controls of helicopters, towing, sales flights and business are left to the pilot. Night is that of 14 CFR 1.1. Pilots of a higher level who use sport privileges are judged at their own level.',
    },
    judge: (f: FactView<Reads>, moment: Moment, p: Parameters, take: Take<Branch>): Judgement =>
      judge(f, moment, p, take, amended),
  };
}

function judge(
  f: FactView<Reads>,
  moment: Moment,
  p: Parameters,
  take: Take<Branch>,
  amended: boolean,
): Judgement {
  const type = f.get('aircraft.type');
  const level = exercised(standingOf(f.get('pic.certificates'), moment), type)?.level;
  if (level !== 'sport') return take('not-sport');
  const endorsements = f.get('pic.endorsements');
  const medical = sportMedical(f, moment, p);
  const { shortfalls, conditions } = together(
    amended ? sportAircraft(type, endorsements, moment, p) : lightSportAircraft(type, p),
    { shortfalls: tooManyPassengers(f, p.number('us.sport.passengers')), conditions: [] },
    { shortfalls: hireOrInstruments(f), conditions: [] },
    altitude(f, p.number('us.sport.altitude-ft-msl'), p.number('us.sport.altitude-ft-agl')),
    visibility(f, p.number('us.sport.visibility-sm'), moment, p),
    airspace(f, endorsements, 'sport-airspace', moment),
    medicalFooting(f, medical, moment, p),
    amended ? night(f, medical.on, moment, p) : noNight(f, moment, p),
  );
  if (shortfalls.length > 0) {
    // What is not on record about the medical footing would still be asked, so it must be settled along.
    const unsettled = medical.on === null && medical.wrong.length === 0;
    const all = unsettled ? [...shortfalls, examinedFor(f, '', moment, p)] : shortfalls;
    const remedies = () => curesOf(all, 'keep-within-sport-limits');
    return take('beyond', { wrong: saysAll(shortfalls) }, { remedies });
  }
  if (medical.on === null) need(null, 'pic.basicMed', `not on record: ${medical.missing.join(', ')}`);
  return take('within', { medical: medical.on! }, { conditions });
}

/** Something must serve by day at least. What is merely not on record is left for the caller to say. */
function medicalFooting(
  f: FactView<Reads>,
  medical: ReturnType<typeof sportMedical>,
  moment: Moment,
  p: Parameters,
): Found {
  if (medical.on !== null || medical.wrong.length === 0) return { shortfalls: [], conditions: [] };
  const what = `no medical certificate or BasicMed serves, and ${medical.wrong.join(', and ')}`;
  return { shortfalls: [examinedFor(f, what, moment, p)], conditions: [] };
}

/** 14 CFR 61.329: at night an endorsement, and a medical certificate or BasicMed. */
function night(
  f: FactView<Reads>,
  on: ReturnType<typeof sportMedical>['on'],
  moment: Moment,
  p: Parameters,
): Found {
  const { route } = f.flight;
  const kind = 'sport-night' as const;
  const trained = endorsementFor(f.get('pic.endorsements'), moment, { kind }) !== null;
  const examined = on === 'medical certificate' || on === 'BasicMed';
  if (trained && examined) return { shortfalls: [], conditions: [] };
  if (!touchesNight(moment, route, 'civil'))
    return { shortfalls: [], conditions: downBeforeNight(moment, route, 'civil', p) };
  const shortfalls: Shortfall[] = [];
  const byDay = () => flyByDay(moment, route, 'civil');
  if (!trained) {
    const title = 'Train at night with an instructor and be endorsed.';
    const cures = () => [...byDay(), ...(examined ? getEndorsement(moment, { kind }, title) : [])];
    shortfalls.push({ what: 'part of the flight is at night, without the night endorsement', cures });
  }
  // A driver's licence that serves by day does not serve at night; with none at all that is said already.
  if (on === 'driver’s licence') {
    const what = 'at night a driver’s licence does not stand for a medical certificate or BasicMed';
    const { cures } = examinedFor(f, what, moment, p);
    shortfalls.push({ what, cures: () => [...byDay(), ...cures()] });
  }
  return { shortfalls, conditions: [] };
}

function noNight(f: FactView<Reads>, moment: Moment, p: Parameters): Found {
  const { route } = f.flight;
  if (!touchesNight(moment, route, 'civil'))
    return { shortfalls: [], conditions: downBeforeNight(moment, route, 'civil', p) };
  const cures = () => flyByDay(moment, route, 'civil');
  return { shortfalls: [{ what: 'part of the flight is at night', cures }], conditions: [] };
}
