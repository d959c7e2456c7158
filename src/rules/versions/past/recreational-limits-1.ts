import { addDays } from '../../calendar/dates.js';
import type { Moment } from '../../engine/moment.js';
import type { Parameters } from '../../engine/parameters.js';
import { defineRule, type FactView } from '../../engine/rule.js';
import { need } from '../../engine/unknown.js';
import type { AircraftType } from '../../facts/aircraft.js';
import type { EndorsementFact, LogFact } from '../../facts/person.js';
import { touchesNight } from '../../sky/nights.js';
import { downBeforeNight, flyByDay, NIGHT_PARAMETERS } from '../../packs/common/shared/by-day.js';
import { exercised, standingOf } from '../../packs/us/pilot/shared/certificates.js';
import { fromOrigin, roundNm } from '../../packs/common/shared/distance.js';
import { endorsementFor, getEndorsement } from '../../packs/common/people/endorsements.js';
import { stayLocal } from '../../packs/common/shared/flight-changes.js';
import { curesOf, saysAll, NO_CURE, type Shortfall } from '../../packs/common/people/shortfalls.js';
import {
  airspace,
  altitude,
  hireOrInstruments,
  together,
  tooManyPassengers,
  visibility,
  VISIBILITY_PARAMETERS,
  type Found,
} from '../../packs/us/pilot/certificates/limits.js';

/** 14 CFR 61.101: what a recreational pilot may fly, with whom, where and when. */
export const recreationalLimits1 = defineRule({
  id: 'recreational.limits',
  title: 'Limits of a recreational pilot',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.certificates', 'pic.endorsements', 'pic.log', 'aircraft.type'],
  parameters: [
    'us.recreational.passengers',
    'us.recreational.occupants',
    'us.recreational.engines',
    'us.recreational.power-hp',
    'us.recreational.distance-nm',
    'us.recreational.altitude-ft-msl',
    'us.recreational.altitude-ft-agl',
    'us.recreational.visibility-sm',
    'us.recreational.retrain-below-hours',
    'us.recreational.retrain-after-days',
    ...NIGHT_PARAMETERS,
    ...VISIBILITY_PARAMETERS,
  ],
  branches: {
    'not-recreational': {
      status: 'not-applicable',
      says: 'The pilot in command is not flying on a recreational certificate.',
    },
    within: { status: 'met', says: 'The flight is within the limits of a recreational pilot.' },
    beyond: { status: 'short', says: 'Beyond the limits of a recreational pilot: {wrong}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 61.101',
        status: 'seen',
        reading:
          'An endorsement that lists airfields serves only from those. Above 10,000 ft the height is known over the airfields of the route alone, so elsewhere it is a condition. Hours count as far as the log on record goes. Furtherance of a business, towing and airlifts are left to the pilot.',
      },
      judge(f, moment, p, take) {
        const type = f.get('aircraft.type');
        const level = exercised(standingOf(f.get('pic.certificates'), moment), type)?.level;
        if (level !== 'recreational') return take('not-recreational');
        const endorsements = f.get('pic.endorsements');
        const { shortfalls, conditions } = together(
          { shortfalls: aircraftLimits(type, p), conditions: [] },
          { shortfalls: tooManyPassengers(f, p.number('us.recreational.passengers')), conditions: [] },
          { shortfalls: hireOrInstruments(f), conditions: [] },
          { shortfalls: distance(f, endorsements, moment, p), conditions: [] },
          altitude(
            f,
            p.number('us.recreational.altitude-ft-msl'),
            p.number('us.recreational.altitude-ft-agl'),
          ),
          visibility(f, p.number('us.recreational.visibility-sm'), moment, p),
          airspace(f, endorsements, 'recreational-airspace', moment),
          { shortfalls: breakInFlying(f.get('pic.log'), endorsements, moment, p), conditions: [] },
          daylight(f, moment, p),
        );
        if (shortfalls.length > 0) {
          const remedies = () => curesOf(shortfalls, 'keep-within-recreational-limits');
          return take('beyond', { wrong: saysAll(shortfalls) }, { remedies });
        }
        return take('within', {}, { conditions });
      },
    },
  ],
});

function aircraftLimits(type: AircraftType, p: Parameters): Shortfall[] {
  const occupants = p.number('us.recreational.occupants');
  const engines = p.number('us.recreational.engines');
  const power = p.number('us.recreational.power-hp');
  const wrong: string[] = [];
  if (type.occupantsCertificated > occupants)
    wrong.push(
      `the aircraft is certificated for ${type.occupantsCertificated} occupants, more than ${occupants}`,
    );
  if (type.engines > engines) wrong.push(`the aircraft has ${type.engines} engines, more than ${engines}`);
  if (type.category !== 'rotorcraft') {
    const hp = need(type.powerPerEngineHp, 'aircraft.type', 'the power of the engine is not on record');
    if (hp > power) wrong.push(`the engine has ${hp} hp, more than ${power}`);
  }
  if (type.retractableGear) wrong.push('the landing gear retracts');
  if (type.category === 'glider' || type.category === 'lighter-than-air' || type.category === 'powered-lift')
    wrong.push(`the aircraft is a ${type.category} aircraft`);
  return wrong.map((what) => ({ what, cures: NO_CURE }));
}

function distance(
  f: Pick<FactView, 'flight'>,
  endorsements: readonly EndorsementFact[],
  moment: Moment,
  p: Parameters,
): Shortfall[] {
  if (endorsementFor(endorsements, moment, { kind: 'recreational-cross-country' })) return [];
  const limit = p.number('us.recreational.distance-nm');
  const { origin, farthestNm } = fromOrigin(f.flight.route);
  const crossCountry = () =>
    getEndorsement(
      moment,
      { kind: 'recreational-cross-country' },
      'Train cross-country with an instructor and be endorsed.',
    );
  const local = { kind: 'recreational-50nm' as const, airfields: [origin.code] };
  const endorsed = endorsementFor(endorsements, moment, local) !== null;
  if (farthestNm > limit) {
    const what = `the flight goes ${roundNm(farthestNm)} NM from ${origin.code}, beyond ${limit}, without the cross-country endorsement`;
    return [{ what, cures: () => [...(endorsed ? [stayLocal(f.flight.route)] : []), ...crossCountry()] }];
  }
  if (endorsed) return [];
  const title = `Train with an instructor around ${origin.code} and be endorsed for flights within ${limit} NM of it.`;
  const what = `there is no endorsement for flights within ${limit} NM of ${origin.code}`;
  return [{ what, cures: () => [...getEndorsement(moment, local, title), ...crossCountry()] }];
}

function breakInFlying(
  log: readonly LogFact[],
  endorsements: readonly EndorsementFact[],
  moment: Moment,
  p: Parameters,
): Shortfall[] {
  const days = p.number('us.recreational.retrain-after-days');
  const hours = p.number('us.recreational.retrain-below-hours');
  const flown = log.filter((entry) => entry.device === null && moment.departsAtOrAfter(entry.departedAt));
  if (flown.reduce((sum, entry) => sum + entry.totalTenths, 0) >= hours * 10) return [];
  const inCommand = flown.some(
    ({ role, on }) =>
      (role === 'pilot-in-command' || role === 'solo' || role === 'instructor') &&
      moment.endsOnOrBefore(addDays(on, days)),
  );
  const wanted = { kind: 'recreational-refresher' as const, withinDays: days };
  if (inCommand || endorsementFor(endorsements, moment, wanted)) return [];
  return [
    {
      what: `with fewer than ${hours} hours, no flight as pilot in command in the preceding ${days} days`,
      cures: () =>
        getEndorsement(moment, wanted, 'Fly with an instructor and be endorsed as proficient again.'),
    },
  ];
}

function daylight(f: Pick<FactView, 'flight'>, moment: Moment, p: Parameters): Found {
  const { route } = f.flight;
  if (!touchesNight(moment, route, 'lights'))
    return { shortfalls: [], conditions: downBeforeNight(moment, route, 'lights', p) };
  const cures = () => flyByDay(moment, route, 'lights');
  return {
    shortfalls: [{ what: 'part of the flight is between sunset and sunrise', cures }],
    conditions: [],
  };
}
