import { throughCalendarMonths } from '../../calendar/dates.js';
import type { Moment } from '../../engine/moment.js';
import type { Remedy } from '../../engine/remedy.js';
import { defineRule } from '../../engine/rule.js';
import type { AircraftType } from '../../facts/aircraft.js';
import type { LogFact } from '../../facts/person.js';
import { CHANGE_TO_VFR } from '../../packs/common/shared/flight-changes.js';
import { plannedLandings } from '../../packs/planned-flight.js';
import { wouldServe } from '../../packs/common/people/plans.js';
import {
  instrumentCurrency,
  withTasks,
  type InstrumentNumbers,
} from '../../packs/us/pilot/recency/instrument-currency.js';

/**
 * 14 CFR 61.57(c) and (d): to act as pilot in command under instrument flight rules, six approaches, holding, and
 * intercepting and tracking within the six calendar months before the month of flight, in the category or a device that
 * stands for it. Lapsed for up to six more, the same tasks restore it (never while acting as pilot in command under
 * IFR); lapsed for longer, only an instrument proficiency check does.
 */
export const instrumentRecency1 = defineRule({
  id: 'recency.instrument',
  title: 'Recent instrument experience',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.log', 'pic.reviews', 'aircraft.type'],
  parameters: [
    'us.instrument.calendar-months',
    'us.instrument.approaches',
    'us.instrument.grace-calendar-months',
  ],
  branches: {
    'not-ifr': { status: 'not-applicable', says: 'The flight is planned under visual flight rules.' },
    'by-tasks': {
      status: 'met',
      says: 'Instrument approaches, holding and tracking are recent enough; good through {through}.',
    },
    'by-check': {
      status: 'met',
      says: 'An instrument proficiency check on {on} serves; good through {through}.',
    },
    'lapsed-regain-by-tasks': {
      status: 'short',
      says: 'Instrument experience in {category} lapsed after {through}; flying {approaches} approaches, holding and tracking with a safety pilot or in a device restores it until {graceThrough}.',
    },
    'lapsed-check-needed': {
      status: 'short',
      says: 'Instrument experience in {category} lapsed after {through}, more than {grace} calendar months before the flight; only an instrument proficiency check restores it.',
    },
    'none-shown': {
      status: 'short',
      says: 'The record shows no {approaches} approaches, holding and tracking within {months} calendar months in {category}, and no instrument proficiency check.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 61.57(c), (d)',
        status: 'seen',
        reading:
          'Tasks in the month of the flight count, though the text speaks of the months preceding it (common practice). Only tasks flown as sole manipulator count. A set flown more than six calendar months after a lapse restores nothing. Where the record shows no earlier privileges, a check is asked for. A practical test is not taken for its tasks; log them.',
      },
      judge(f, moment, p, take) {
        if (f.flight.flightRules === 'VFR') return take('not-ifr');
        const type = f.get('aircraft.type');
        const numbers: InstrumentNumbers = {
          months: p.number('us.instrument.calendar-months'),
          approaches: p.number('us.instrument.approaches'),
          graceMonths: p.number('us.instrument.grace-calendar-months'),
        };
        const entries = withTasks(f.get('pic.log'), type.category).filter((entry) =>
          moment.departsAtOrAfter(entry.departedAt),
        );
        const checks = f
          .get('pic.reviews')
          .filter(
            (review) =>
              review.kind === 'instrument-proficiency-check' &&
              review.category === type.category &&
              moment.startsOnOrAfter(review.on),
          );
        const { through, by, evidence } = instrumentCurrency(entries, checks, numbers);
        const values = {
          category: type.category,
          months: numbers.months,
          approaches: numbers.approaches,
          grace: numbers.graceMonths,
        };
        const check = () => passCheck(type, moment, numbers);
        if (through === null)
          return take('none-shown', values, { remedies: () => [...check(), CHANGE_TO_VFR] });
        if (moment.endsOnOrBefore(through)) {
          if (by === 'tasks') return take('by-tasks', { through }, { counted: evidence });
          return take('by-check', { through, on: evidence[0]!.on }, { counted: evidence });
        }
        const graceThrough = throughCalendarMonths(through, numbers.graceMonths);
        if (moment.endsOnOrBefore(graceThrough)) {
          return take(
            'lapsed-regain-by-tasks',
            { ...values, through, graceThrough },
            { remedies: () => [...flyTasks(type, moment, numbers), ...check(), CHANGE_TO_VFR] },
          );
        }
        return take(
          'lapsed-check-needed',
          { ...values, through },
          { remedies: () => [...check(), CHANGE_TO_VFR] },
        );
      },
    },
  ],
});

function passCheck(type: AircraftType, moment: Moment, { months }: InstrumentNumbers): Remedy[] {
  if (!wouldServe(moment, (today) => throughCalendarMonths(today, months))) return [];
  const act = 'pass-instrument-proficiency-check';
  return [
    {
      act,
      title: 'Pass an instrument proficiency check with an instrument instructor.',
      by: 'instructor',
      effects: [
        {
          op: 'append',
          fact: 'pic.reviews',
          value: {
            id: `planned:${act}`,
            kind: 'instrument-proficiency-check',
            on: moment.knowledgeDate(),
            groundTenths: null,
            flightTenths: null,
            category: type.category,
            endorsedAsReview: false,
          },
        },
      ],
    },
  ];
}

function flyTasks(type: AircraftType, moment: Moment, { months, approaches }: InstrumentNumbers): Remedy[] {
  if (!wouldServe(moment, (today) => throughCalendarMonths(today, months))) return [];
  const act = 'fly-instrument-tasks';
  const entry: LogFact = {
    ...plannedLandings(type, 1, false, moment),
    id: `planned:${act}`,
    approaches,
    holding: true,
    interceptTrack: true,
    totalTenths: 20,
  };
  return [
    {
      act,
      title: `Fly ${approaches} approaches, holding, and intercepting and tracking, under a view-limiting device with a safety pilot, or in a training device.`,
      by: 'member',
      effects: [{ op: 'append', fact: 'pic.log', value: entry }],
    },
  ];
}
