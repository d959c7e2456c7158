import { toInstant } from '../../../calendar/instants.js';
import type { Moment } from '../../../engine/moment.js';
import type { Remedy } from '../../../engine/remedy.js';
import { defineRule } from '../../../engine/rule.js';
import type { TeachingHoursFact } from '../../../facts/person.js';
import { dateAndClock } from '../../when.js';
import { hoursInWords, hoursOn, windowsAround } from './teaching-windows.js';

/** Club rule: a lesson lies within the hours its instructor keeps, or its time is agreed on. */
export const instructorHours = defineRule({
  id: 'calendar.instructor_hours',
  title: 'The hours of the instructor',
  weight: 'club',
  binds: 'instructor',
  reads: ['instructor.teachingHours'],
  parameters: ['club.instructor-hours.refuse-outside'],
  branches: {
    nobody: { status: 'not-applicable', says: 'No instructor is named for the flight.' },
    'none-kept': {
      status: 'not-applicable',
      says: 'The instructor keeps no hours on record; ask whether the time suits.',
    },
    within: { status: 'met', says: 'The lesson lies within the hours the instructor keeps ({hours}).' },
    'to-agree': {
      status: 'met',
      says: 'On that day the instructor keeps these hours: {hours}. The time is to be agreed on.',
    },
    outside: {
      status: 'short',
      says: 'On that day the instructor keeps these hours: {hours}. The club takes no lessons outside of them.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Club handbook, section 4.5',
        status: 'club paper',
        reading:
          'Hours told for one date stand instead of those of the week. The whole lesson must lie within.',
      },
      judge(f, moment, p, take) {
        if (f.flight.instructorId === null) return take('nobody');
        const refuses = p.flag('club.instructor-hours.refuse-outside');
        const all = f.get('instructor.teachingHours');
        if (all.length === 0) return take('none-kept');
        const today = hoursOn(all, moment.departureDate());
        const hours = today.length > 0 ? hoursInWords(today) : 'none';
        const counted = today.map((one) => ({
          id: one.id,
          on: one.on,
          what: `teaches ${hoursInWords([one])}`,
        }));
        if (withinHours(all, moment)) return take('within', { hours }, { counted });
        if (!refuses)
          return take(
            'to-agree',
            { hours },
            {
              counted,
              conditions: ['Agree on the time with the instructor: it lies outside the hours kept.'],
            },
          );
        return take(
          'outside',
          { hours },
          {
            counted,
            remedies: () => [...nextWithin(all, moment), ANOTHER],
          },
        );
      },
    },
  ],
});

const ANOTHER: Remedy = {
  act: 'name-another-instructor',
  title: 'Ask for another instructor.',
  by: 'member',
  effects: [{ op: 'flight', fields: { instructorId: null } }],
};

const withinHours = (all: readonly TeachingHoursFact[], moment: Moment): boolean =>
  moment.watch((flight) => {
    const { windows, knownTo } = windowsAround(all, flight, moment.zone);
    return {
      answer: windows.some(({ from, to }) => from <= flight.departs && flight.arrives <= to),
      edges: windows.flatMap(({ from, to }) => [from, to]),
      knownTo,
      clock: true,
    };
  });

/** The same lesson as early as the hours have room for it after the departure asked for. */
function nextWithin(all: readonly TeachingHoursFact[], moment: Moment): Remedy[] {
  const { durationSeconds, zone } = moment;
  const begin = moment.aside().watch((flight) => {
    const { windows, knownTo } = windowsAround(all, flight, zone);
    const room = windows.find(({ from, to }) => from >= flight.departs && to - from >= durationSeconds);
    return { answer: room?.from ?? null, edges: [], knownTo };
  });
  if (begin === null) return [];
  return [
    {
      act: 'depart-later',
      title: `Leave at ${dateAndClock(begin, zone)}, when the instructor teaches.`,
      by: 'member',
      effects: [
        {
          op: 'flight',
          fields: { departs: toInstant(begin), arrives: toInstant(begin + durationSeconds) },
        },
      ],
    },
  ];
}
