import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import { defineRule, type FactView } from '../../../../engine/rule.js';
import { need } from '../../../../engine/unknown.js';
import type { AircraftType } from '../../../../facts/aircraft.js';
import type { Fact } from '../../../../facts/fact.js';
import type { EndorsementFact, LogBeforeFact, LogFact } from '../../../../facts/person.js';
import { touchesNight } from '../../../../sky/nights.js';
import { downBeforeNight, flyByDay, NIGHT_PARAMETERS } from '../../../common/shared/by-day.js';
import { recreationalLimits1 } from '../../../../versions/past/recreational-limits-1.js';
import { exercised, standingOf } from '../shared/certificates.js';
import { fromOrigin, roundNm } from '../../../common/shared/distance.js';
import { endorsementFor, getEndorsement } from '../../../common/people/endorsements.js';
import { stayLocal } from '../../../common/shared/flight-changes.js';
import { curesOf, saysAll, NO_CURE, type Shortfall } from '../../../common/people/shortfalls.js';
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

const COMMAND: readonly LogFact['role'][] = ['pilot-in-command', 'solo', 'instructor'];

/** 14 CFR 61.101: what a recreational pilot may fly, with whom, where and when. */
export const recreationalLimits = defineRule({
  id: 'recreational.limits',
  title: 'Limits of a recreational pilot',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.certificates', 'pic.endorsements', 'pic.log', 'pic.logBefore', 'aircraft.type'],
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
      version: 2,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 61.101',
        status: 'seen',
        reading:
          'An endorsement that lists airfields serves only from those. Above 10,000 ft the height is known over the airfields of the route alone, so elsewhere it is a condition. Hours count as far as the log on record and the sums before it go. Furtherance of a business, towing and airlifts are left to the pilot.',
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
          { shortfalls: breakInFlying(f, endorsements, moment, p), conditions: [] },
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
  superseded: [recreationalLimits1 as never],
  changed:
    'Hours flown before the log on record begins count towards those from which no retraining is needed.',
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
    wrong.push(`the aircraft is no airplane or rotorcraft`);
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
  f: FactView<'pic.log' | 'pic.logBefore'>,
  endorsements: readonly EndorsementFact[],
  moment: Moment,
  p: Parameters,
): Shortfall[] {
  const days = p.number('us.recreational.retrain-after-days');
  const hours = p.number('us.recreational.retrain-below-hours');
  const flown = f.get('pic.log').filter(({ device }) => device === null);
  const inCommand = flown.some(
    ({ role, on, departedAt }) =>
      COMMAND.includes(role) && moment.endsWithinDaysOf(on, days) && moment.departsAtOrAfter(departedAt),
  );
  const wanted = { kind: 'recreational-refresher' as const, withinDays: days };
  if (inCommand || endorsementFor(endorsements, moment, wanted)) return [];
  if (tenthsFlown(flown, f.peek('pic.logBefore'), moment) >= hours * 10) return [];
  return [
    {
      what: `with fewer than ${hours} hours, no flight as pilot in command in the preceding ${days} days`,
      cures: () =>
        getEndorsement(moment, wanted, 'Fly with an instructor and be endorsed as proficient again.'),
    },
  ];
}

/** Hours of the log and of the sums before it, tenths. Sums that are not on record add nothing. */
function tenthsFlown(flown: readonly LogFact[], before: Fact<LogBeforeFact>, moment: Moment): number {
  const logged = flown.reduce(
    (sum, { totalTenths, departedAt }) => sum + (moment.departsAtOrAfter(departedAt) ? totalTenths : 0),
    0,
  );
  if (!before.known) return logged;
  const { through, sums } = before.value;
  if (through !== null && !moment.departsAtOrAfter(through)) return logged;
  return sums.reduce((sum, { totalTenths }) => sum + totalTenths, logged);
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
