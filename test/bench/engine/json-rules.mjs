/**
 * The ten rules for json-rules-engine, as its guide has it: asynchronous facts gather and count, conditions in JSON compare
 * and choose, one JSON rule for each way a rule may come out, and the event carries the verdict. Facts are cached by the
 * engine for one run; the engine and its rules are made once. Same scope as by-hand.mjs.
 */
import { Engine } from 'json-rules-engine';
import { addDays, localDateOf, toSeconds } from '../../../dist/src/rules/index.js';
import { aircraftFacts } from './json-rules-aircraft.mjs';
import { pilotFacts } from './json-rules-pilot.mjs';
import { aheadOf, lasting, NUMBERS } from './ten-rules.mjs';

const N = NUMBERS;

const is = (fact, path, value) => ({ fact, path, operator: 'equal', value });
const isNot = (fact, path, value) => ({ fact, path, operator: 'notEqual', value });
const atLeast = (fact, path, value) => ({ fact, path, operator: 'greaterThanInclusive', value });
const atMost = (fact, path, value) => ({ fact, path, operator: 'lessThanInclusive', value });
const less = (fact, path, value) => ({ fact, path, operator: 'lessThan', value });
const more = (fact, path, value) => ({ fact, path, operator: 'greaterThan', value });
/** The date covers the flight's end. */
const lasts = (fact, path) => ({ fact, path, operator: 'lastsThrough', value: { fact: 'endsOn' } });
const tooShort = (fact, path) => ({ fact, path, operator: 'endsBefore', value: { fact: 'endsOn' } });

/** Each rule: the fact it is about, and per branch its status and conditions; all but `always` also need the fact known. */
export const RULES = [
  {
    rule: 'recency.passengers.day',
    about: 'recency',
    only: [more('crew', 'passengers', 0)],
    always: { 'nobody-carried': ['not-applicable', [is('crew', 'passengers', 0)]] },
    branches: {
      enough: [
        'met',
        [atLeast('recency', 'takeoffs', N.recency.needed), atLeast('recency', 'landings', N.recency.needed)],
      ],
      short: [
        'short',
        [
          {
            any: [
              less('recency', 'takeoffs', N.recency.needed),
              less('recency', 'landings', N.recency.needed),
            ],
          },
        ],
      ],
    },
  },
  {
    rule: 'medical.certificate',
    about: 'medical',
    branches: {
      valid: ['met', [is('medical', 'serves', true)]],
      'relies-on-basicmed': [
        'not-applicable',
        [is('medical', 'serves', false), is('medical', 'basicMed', true)],
      ],
      none: ['short', [is('medical', 'serves', false), is('medical', 'basicMed', false)]],
    },
  },
  {
    rule: 'review.flight_24_months',
    about: 'review',
    branches: {
      reviewed: ['met', [is('review', 'found', true)]],
      due: ['short', [is('review', 'found', false)]],
    },
  },
  {
    rule: 'inspection.annual',
    about: 'annual',
    branches: {
      current: ['met', [isNot('annual', 'on', null), lasts('annual', 'through')]],
      overdue: ['short', [{ any: [is('annual', 'on', null), tooShort('annual', 'through')] }]],
    },
  },
  {
    rule: 'registration.validity',
    about: 'registration',
    branches: {
      none: ['short', [is('registration', 'issued', null)]],
      ended: ['short', [is('registration', 'ended', true)]],
      valid: [
        'met',
        [
          isNot('registration', 'issued', null),
          is('registration', 'ended', false),
          lasts('registration', 'through'),
        ],
      ],
      expired: [
        'short',
        [
          isNot('registration', 'issued', null),
          is('registration', 'ended', false),
          tooShort('registration', 'through'),
        ],
      ],
    },
  },
  {
    rule: 'load.persons',
    about: 'load',
    branches: {
      'nobody-flies': ['short', [less('load', 'aboard', 1)]],
      'not-alone': ['short', [is('load', 'purpose', 'solo'), more('load', 'aboard', 1)]],
      'crew-missing': [
        'short',
        [atLeast('load', 'aboard', 1), less('load', 'aboard', { fact: 'load', path: 'least' })],
      ],
      'too-many': [
        'short',
        [
          atLeast('load', 'aboard', { fact: 'load', path: 'least' }),
          { not: { all: [is('load', 'purpose', 'solo'), more('load', 'aboard', 1)] } },
          more('load', 'aboard', { fact: 'load', path: 'seats' }),
        ],
      ],
      seated: [
        'met',
        [
          atLeast('load', 'aboard', { fact: 'load', path: 'least' }),
          { not: { all: [is('load', 'purpose', 'solo'), more('load', 'aboard', 1)] } },
          atMost('load', 'aboard', { fact: 'load', path: 'seats' }),
        ],
      ],
    },
  },
  {
    rule: 'squawk.grounding',
    about: 'squawks',
    branches: {
      grounded: ['short', [more('squawks', 'grounding', 0)]],
      'look-first': ['met', [is('squawks', 'grounding', 0), more('squawks', 'reported', 0)]],
      clear: ['met', [is('squawks', 'grounding', 0), is('squawks', 'reported', 0)]],
    },
  },
  {
    rule: 'club.model_checkout',
    about: 'checkout',
    branches: {
      'checked-out': ['met', [isNot('checkout', 'on', null)]],
      'not-checked-out': ['short', [is('checkout', 'on', null)]],
    },
  },
  {
    rule: 'club.standing',
    about: 'standing',
    branches: {
      good: ['met', [{ any: [is('standing', 'state', 'good'), is('standing', 'begun', false)] }]],
      suspended: ['short', [is('standing', 'state', 'suspended'), is('standing', 'begun', true)]],
      tolerated: [
        'met',
        [is('standing', 'state', 'arrears'), is('standing', 'begun', true), lasts('standing', 'through')],
      ],
      arrears: [
        'short',
        [is('standing', 'state', 'arrears'), is('standing', 'begun', true), tooShort('standing', 'through')],
      ],
    },
  },
  {
    rule: 'club.booking_length',
    about: 'booking',
    branches: {
      maintenance: ['not-applicable', [is('booking', 'purpose', 'maintenance')]],
      within: [
        'met',
        [
          isNot('booking', 'purpose', 'maintenance'),
          atMost('booking', 'seconds', { fact: 'booking', path: 'limitSeconds' }),
        ],
      ],
      'too-long': [
        'short',
        [
          isNot('booking', 'purpose', 'maintenance'),
          more('booking', 'seconds', { fact: 'booking', path: 'limitSeconds' }),
        ],
      ],
    },
  },
];

/** Makes the engine; `words` are the sentences. Gives an asynchronous (sheet, departs) => verdicts. */
export function jsonRules(words) {
  const engine = new Engine([], { pathResolver: (value, path) => value?.[path] });
  const isDate = (value) => typeof value === 'string';
  engine.addOperator('lastsThrough', (date, endsOn) => isDate(date) && endsOn <= date);
  engine.addOperator('endsBefore', (date, endsOn) => isDate(date) && endsOn > date);
  for (const [name, fact] of Object.entries({ ...requestFacts, ...pilotFacts, ...aircraftFacts }))
    engine.addFact(name, fact);
  for (const { rule, about, only = [], always = {}, branches } of RULES) {
    const add = (status, branch, all) =>
      engine.addRule({ conditions: { all }, event: { type: rule, params: { status, branch, about } } });
    add('unknown', 'unknown', [...only, isNot(about, 'unknown', null)]);
    for (const [branch, [status, all]] of Object.entries(always)) add(status, branch, all);
    for (const [branch, [status, all]] of Object.entries(branches))
      add(status, branch, [...only, is(about, 'unknown', null), ...all]);
  }
  return async (sheet, departs) => {
    const { events, almanac } = await engine.run({ sheet, departs });
    return Promise.all(
      events.map(async ({ type: rule, params: { status, branch, about } }) => {
        const values = await almanac.factValue(about);
        const says = status === 'unknown' ? `Cannot tell: ${values.unknown}.` : words[rule][branch](values);
        const conditions = status === 'met' ? (values.conditions ?? []) : [];
        return { rule, status, says, conditions };
      }),
    );
  };
}

export const requestFacts = {
  async duration(_params, almanac) {
    const { flight } = await almanac.factValue('sheet');
    return Math.max(0, toSeconds(flight.arrives) - toSeconds(flight.departs));
  },
  async startsOn(_params, almanac) {
    return localDateOf(await almanac.factValue('departs'), (await almanac.factValue('sheet')).zone);
  },
  async endsOn(_params, almanac) {
    const [sheet, departs, duration] = await Promise.all(
      ['sheet', 'departs', 'duration'].map((fact) => almanac.factValue(fact)),
    );
    return localDateOf(departs + duration, sheet.zone);
  },
  async crew(_params, almanac) {
    const { flight } = await almanac.factValue('sheet');
    const instruction = flight.purpose === 'dual' || flight.purpose === 'checkout';
    return {
      instruction,
      picId: instruction ? flight.instructorId : flight.memberId,
      passengers: Math.max(0, flight.personsOnBoard - (instruction ? 2 : 1)),
    };
  },
  async standing(_params, almanac) {
    const { flight, people } = await almanac.factValue('sheet');
    const fact = people[flight.memberId]?.standing;
    if (!fact) return { unknown: 'nothing is on record for the member' };
    if (!fact.known) return { unknown: fact.because };
    const { state, since } = fact.value;
    const days = N.arrearsDays;
    const begun = (await almanac.factValue('endsOn')) >= since;
    const through = addDays(since, days);
    return { unknown: null, state, since, days, begun, through, ahead: aheadOf(state, since) };
  },
  async booking(_params, almanac) {
    const { purpose, route } = (await almanac.factValue('sheet')).flight;
    const { instruction } = await almanac.factValue('crew');
    const seconds = await almanac.factValue('duration');
    const trip = !instruction && route.some((field) => field.id !== route[0]?.id);
    const { localHours, tripDays, instructionHours } = N.booking;
    const hours = instruction ? instructionHours : trip ? tripDays * 24 : localHours;
    return {
      unknown: null,
      purpose,
      seconds,
      limitSeconds: hours * 3600,
      length: lasting(seconds),
      limit: trip ? `${tripDays} days` : `${hours} h`,
      kind: instruction ? 'for instruction' : trip ? 'for a trip' : 'for a flight that lands nowhere else',
    };
  },
};
