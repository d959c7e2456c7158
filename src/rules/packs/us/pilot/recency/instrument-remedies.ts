/** Ways back to instrument privileges: the tasks of 14 CFR 61.57(c), or a proficiency check. */
import { throughCalendarMonths, type LocalDate } from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Remedy } from '../../../../engine/remedy.js';
import type { AircraftType } from '../../../../facts/aircraft.js';
import type { LogFact } from '../../../../facts/person.js';
import { wouldServe } from '../../../common/people/plans.js';
import { plannedLandings } from '../../../planned-flight.js';
import { plannedReview } from '../../../planned-review.js';
import type { InstrumentNumbers } from './instrument-currency.js';

/** A proficiency check today, where it would still serve. */
export function passCheck(type: AircraftType, moment: Moment, { months }: InstrumentNumbers): Remedy[] {
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
          value: plannedReview(act, 'instrument-proficiency-check', moment, type.category),
        },
      ],
    },
  ];
}

/** The tasks flown today, while they still restore what lapsed, for a flight on which they no longer would. */
export function flyTasksInTime(
  type: AircraftType,
  moment: Moment,
  { lapsed, ...numbers }: InstrumentNumbers & { lapsed: LocalDate },
): Remedy[] {
  const last = throughCalendarMonths(lapsed, numbers.graceMonths);
  if (moment.knowledgeDate() > last) return [];
  return flyTasks(type, moment, numbers).map((one) => ({
    ...one,
    title: one.title.replace(/\.$/, `, by ${last}.`),
  }));
}

/** The tasks flown today, where they would still serve. */
export function flyTasks(
  type: AircraftType,
  moment: Moment,
  { months, approaches }: InstrumentNumbers,
): Remedy[] {
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
