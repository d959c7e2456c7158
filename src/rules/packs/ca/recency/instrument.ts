import { addPlainMonths, throughCalendarMonths } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { Remedy } from '../../../engine/remedy.js';
import { defineRule } from '../../../engine/rule.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { LogFact } from '../../../facts/person.js';
import { CA_INSTRUMENT } from '../../../parameters/ca/instrument.js';
import { wouldServe } from '../../common/people/plans.js';
import { CHANGE_TO_VFR } from '../../common/shared/flight-changes.js';
import { plannedLandings } from '../../planned-flight.js';
import { plannedReview } from '../../planned-review.js';

/**
 * CARs 401.05(3): an instrument rating is used only within 24 months of a flight test or proficiency check, and past its
 * first months only with six approaches within the last six months. Until 2025-12-17 the first months were twelve, and six
 * hours of instrument time were asked for as well.
 */
export const instrumentRecency = defineRule({
  id: 'recency.canada.instrument',
  title: 'Recent instrument experience',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.reviews', 'pic.log', 'aircraft.type'],
  parameters: CA_INSTRUMENT.map(({ id }) => id),
  branches: {
    'not-ifr': { status: 'not-applicable', says: 'The flight is planned under visual flight rules.' },
    'by-check': {
      status: 'met',
      says: 'The instrument check of {on} serves by itself through {through}.',
    },
    'by-approaches': {
      status: 'met',
      says: 'Instrument check of {on}, and {approaches} approaches in the last {months} months; good through {through}.',
    },
    'check-needed': {
      status: 'short',
      says: 'No instrument flight test or proficiency check is on record for the preceding {checkMonths} months.',
    },
    'approaches-needed': {
      status: 'short',
      says: 'The instrument check of {on} serves by itself only through {free}; in the last {months} months {approaches} of {needed} approaches.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'CARs 401.05(3), SOR/2025-241',
        status: 'from memory',
        reading:
          'Months run day for day; the free ones to the end of the month. A flight test is recorded as an instrument proficiency check. The log does not keep instrument time, so the hours asked for before 2025-12-17 are a condition.',
      },
      judge(f, moment, p, take) {
        if (f.flight.flightRules === 'VFR') return take('not-ifr');
        const type = f.get('aircraft.type');
        const checkMonths = p.number('ca.instrument.check-months');
        const months = p.number('ca.instrument.months');
        const needed = p.number('ca.instrument.approaches');
        const checked = (on: string) => addPlainMonths(on, checkMonths, 'clamp-to-month-end');
        const recent = (on: string) => addPlainMonths(on, months, 'clamp-to-month-end');
        const check = f
          .get('pic.reviews')
          .filter(
            ({ kind, category }) => kind === 'instrument-proficiency-check' && category === type.category,
          )
          .filter(({ on }) => moment.startsOnOrAfter(on) && moment.endsOnOrBefore(checked(on)))
          .sort((a, b) => (`${a.on} ${a.id}` < `${b.on} ${b.id}` ? 1 : -1))[0];
        const pass = () => passCheck(type, moment, checked);
        if (!check)
          return take('check-needed', { checkMonths }, { remedies: () => [...pass(), CHANGE_TO_VFR] });
        const counted = [{ id: check.id, on: check.on, what: 'instrument proficiency check' }];
        const free = throughCalendarMonths(check.on, p.number('ca.instrument.free-calendar-months'));
        if (moment.endsOnOrBefore(free))
          return take('by-check', { on: check.on, through: free }, { counted });
        const flown = approachesIn(f.get('pic.log'), type, moment, needed, recent);
        const values = { on: check.on, months, approaches: flown.approaches, needed, free };
        const evidence = [...counted, ...flown.used.map((entry) => approachesOf(entry))];
        if (flown.approaches >= needed) {
          const last = recent(flown.used.at(-1)!.on);
          const through = last < checked(check.on) ? last : checked(check.on);
          const hours = p.number('ca.instrument.hours');
          const conditions =
            hours > 0 ? [`Make sure of ${hours} hours of instrument time in the last ${months} months.`] : [];
          return take('by-approaches', { ...values, through }, { counted: evidence, conditions });
        }
        return take('approaches-needed', values, {
          counted: evidence,
          remedies: () => [
            ...flyApproaches(type, moment, needed - flown.approaches, recent),
            ...pass(),
            CHANGE_TO_VFR,
          ],
        });
      },
    },
  ],
});

/** The newest approaches in the category that count, until there are enough. */
function approachesIn(
  log: readonly LogFact[],
  type: AircraftType,
  moment: Moment,
  needed: number,
  through: (on: string) => string,
): { approaches: number; used: LogFact[] } {
  const used: LogFact[] = [];
  let approaches = 0;
  const entries = log
    .filter((entry) => entry.approaches > 0 && entry.category === type.category)
    .filter(({ departedAt, on }) => moment.departsAtOrAfter(departedAt) && moment.endsOnOrBefore(through(on)))
    .sort((a, b) => (`${a.on} ${a.departedAt} ${a.id}` < `${b.on} ${b.departedAt} ${b.id}` ? 1 : -1));
  for (const entry of entries) {
    if (approaches >= needed) break;
    approaches += entry.approaches;
    used.push(entry);
  }
  return { approaches, used };
}

const approachesOf = ({ id, on, approaches }: LogFact) => ({ id, on, what: `${approaches} approaches` });

function passCheck(type: AircraftType, moment: Moment, through: (on: string) => string): Remedy[] {
  if (!wouldServe(moment, through)) return [];
  const act = 'pass-instrument-proficiency-check';
  return [
    {
      act,
      title: 'Pass an instrument proficiency check.',
      by: 'examiner',
      effects: [
        {
          op: 'append',
          fact: 'pic.reviews',
          value: plannedReview(act, 'instrument-proficiency-check', moment, type.category),
        },
      ],
    },
  ];
}

function flyApproaches(
  type: AircraftType,
  moment: Moment,
  approaches: number,
  through: (on: string) => string,
): Remedy[] {
  if (!wouldServe(moment, through)) return [];
  const act = 'fly-instrument-tasks';
  const value: LogFact = { ...plannedLandings(type, 1, false, moment), id: `planned:${act}`, approaches };
  return [
    {
      act,
      title: `Fly ${approaches} instrument approaches, in simulated conditions with a safety pilot or in a device.`,
      by: 'member',
      effects: [{ op: 'append', fact: 'pic.log', value }],
    },
  ];
}
