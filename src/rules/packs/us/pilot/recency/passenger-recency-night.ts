import { defineRule } from '../../../../engine/rule.js';
import { need } from '../../../../engine/unknown.js';
import type { LogFact } from '../../../../facts/person.js';
import { touchesNight } from '../../../../sky/nights.js';
import { downBeforeNight, flyByDay, NIGHT_PARAMETERS } from '../../../common/shared/by-day.js';
import { landingsRemedies } from './landings-remedies.js';
import { countRecent, sameKind, upTo, type RecencyCount } from './recent-landings.js';

const NOTHING: RecencyCount = { takeoffs: 0, landings: 0, enough: false, through: null, counted: [] };

/**
 * 14 CFR 61.57(b): passengers between one hour after sunset and one hour before sunrise need three take-offs and three
 * full-stop landings in that window within the preceding 90 days, as sole manipulator, same category, class and (where
 * rated) type. It binds only a flight that enters the window itself. In a tailwheel airplane paragraph (a) must be met
 * as well, so full-stop tailwheel landings are counted with it.
 */
export const passengerRecencyNight = defineRule({
  id: 'recency.passengers.night',
  title: 'Recent night take-offs and landings to carry passengers',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.log', 'aircraft.type'],
  parameters: ['us.passenger-recency.days', 'us.passenger-recency.count', ...NIGHT_PARAMETERS],
  branches: {
    'nobody-carried': {
      status: 'not-applicable',
      says: 'No passengers are carried, so no recent night landings are asked for.',
    },
    enough: {
      status: 'met',
      says: '{takeoffs} night take-offs and {landings} night full-stop landings in the preceding {days} days; good through {through}.',
    },
    'day-only': {
      status: 'met',
      says: 'The flight stays out of the night (one hour after sunset to one hour before sunrise), so no night landings are needed.',
    },
    short: {
      status: 'short',
      says: 'The flight enters the night with passengers: {takeoffs} of {needed} night take-offs and {landings} of {needed} night full-stop landings{how} in the preceding {days} days.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 61.57(b)',
        status: 'seen',
        reading:
          'A landing exactly 90 days before the flight counts. The window is that of every airfield of the route, at the time of the flight. Simulators and the exceptions of 61.57(e) are not counted. What 89 FR 80310 amends from 2024-12-02 is read as by day.',
      },
      judge(f, moment, p, take) {
        if (f.crew.passengers === 0) return take('nobody-carried');
        const type = f.get('aircraft.type');
        const days = p.number('us.passenger-recency.days');
        const needed = p.number('us.passenger-recency.count');
        const log = f.peek('pic.log');
        const count = (give: (entry: LogFact) => { takeoffs: number; landings: number }) =>
          log.known
            ? countRecent(log.value, moment, days, needed, (entry) =>
                sameKind(entry, type) ? give(entry) : { takeoffs: 0, landings: 0 },
              )
            : NOTHING;
        const night = count(({ nightTakeoffs, nightFullStopLandings }) => ({
          takeoffs: nightTakeoffs,
          landings: nightFullStopLandings,
        }));
        const tail = type.tailwheel
          ? count(({ tailwheel, takeoffs, fullStopLandings }) =>
              tailwheel ? { takeoffs, landings: fullStopLandings } : { takeoffs: 0, landings: 0 },
            )
          : night;
        const values = { takeoffs: night.takeoffs, landings: night.landings, days, needed };
        if (night.enough && tail.enough) {
          const through = [night.through!, tail.through!].sort()[0]!;
          return take('enough', { ...values, through }, { counted: night.counted });
        }
        // Only now does the sun matter.
        const { route } = f.flight;
        if (!touchesNight(moment, route, 'passenger'))
          return take('day-only', {}, { conditions: downBeforeNight(moment, route, 'passenger', p) });
        if (!log.known) need(null, 'pic.log', log.because);
        const tailwheel = upTo(needed, tail);
        const how = night.enough
          ? `, but ${tailwheel.takeoffs} of ${needed} take-offs and ${tailwheel.landings} of ${needed} full-stop landings in a tailwheel airplane,`
          : '';
        return take(
          'short',
          { ...values, ...upTo(needed, night), how },
          {
            counted: night.counted,
            remedies: () =>
              landingsRemedies({
                type,
                needed,
                days,
                night: true,
                moment,
                f,
                instead: flyByDay(moment, route, 'passenger'),
              }),
          },
        );
      },
    },
  ],
});
