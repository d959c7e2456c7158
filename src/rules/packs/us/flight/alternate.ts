import { alternateRequired } from '../../../air/fuel.js';
import { plusSeconds } from '../../../calendar/instants.js';
import type { Moment } from '../../../engine/moment.js';
import { defineRule } from '../../../engine/rule.js';
import { need } from '../../../engine/unknown.js';
import type { DeclaredForecast } from '../../../facts/flight.js';
import { ALTERNATE } from '../../../parameters/us/flight.js';
import { dateAndClock } from '../../when.js';

/** Told wherever it is not settled whether an alternate is needed. */
export const CARRY_TO_ALTERNATE =
  'Carry fuel to the alternate too, unless the forecast at the destination makes one unnecessary (14 CFR 91.167(b)).';

const NAME_ONE =
  'File an alternate, and carry fuel to the destination, from there to the alternate, and for 45 minutes after that (14 CFR 91.167(a), 91.169).';

/**
 * 14 CFR 91.167(b): an airplane under instrument flight rules needs no alternate where an approach is published for the
 * destination and the forecast for an hour before to an hour after arrival is good enough. One that is needed forbids
 * nothing; it has to be filed and fuel carried for it.
 */
export const alternateAirport = defineRule({
  id: 'fuel.alternate_required',
  title: 'Alternate airport',
  weight: 'law',
  binds: 'flight',
  settledAt: 'departure',
  whenUnknown: CARRY_TO_ALTERNATE,
  reads: ['aircraft.type'],
  parameters: ALTERNATE.map(({ id }) => id),
  branches: {
    'not-ifr': { status: 'not-applicable', says: 'The flight is planned under visual flight rules.' },
    'not-needed': {
      status: 'met',
      says: 'An approach is published, and {ceiling} ft and {visibility} SM are forecast through {through}: no alternate is needed.',
    },
    needed: {
      status: 'met',
      says: 'An alternate is needed: without one an approach must be published and at least {needCeiling} ft and {needVisibility} SM forecast, from {hours} h before arrival to {hours} h after.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.167(b)',
        status: 'seen',
        reading:
          'The figures are those for airplanes; for a helicopter, which has others, it stays a condition. The planned time of arrival is taken for the estimated one.',
      },
      judge(f, moment, p, take) {
        if (f.flight.flightRules === 'VFR') return take('not-ifr');
        const { category } = f.get('aircraft.type');
        if (category !== 'airplane')
          need(null, 'aircraft.type', 'the figures for other aircraft than airplanes are not kept');
        const { destinationForecast } = f.flight;
        const forecast = need(
          destinationForecast,
          'flight.destinationForecast',
          'the forecast at the destination is not declared',
        );
        const figures = {
          ceilingFt: p.number('us.alternate.ceiling'),
          visibilitySm: p.number('us.alternate.visibility'),
          windowHours: p.number('us.alternate.window'),
        };
        const covered = coversArrival(forecast, moment, figures.windowHours) ? figures.windowHours : 0;
        const required = alternateRequired(
          { ...forecast, coversHoursBefore: covered, coversHoursAfter: covered },
          figures,
        );
        if (!required)
          return take('not-needed', {
            ceiling: forecast.ceilingFtAgl!,
            visibility: forecast.visibilitySm!,
            through: dateAndClock(forecast.to!, moment.zone),
          });
        return take(
          'needed',
          {
            needCeiling: figures.ceilingFt,
            needVisibility: figures.visibilitySm,
            hours: figures.windowHours,
          },
          { conditions: [NAME_ONE] },
        );
      },
    },
  ],
});

/** The forecast speaks of the whole time from so many hours before arrival to so many after. */
function coversArrival({ from, to }: DeclaredForecast, moment: Moment, hours: number): boolean {
  if (from === null || to === null) return false;
  const margin = hours * 3600;
  return (
    !moment.arrivesBefore(plusSeconds(from, margin)) && moment.arrivesBefore(plusSeconds(to, 1 - margin))
  );
}
