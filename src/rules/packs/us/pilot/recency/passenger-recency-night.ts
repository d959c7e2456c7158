import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import { defineRule, type FactView, type Judgement, type Take } from '../../../../engine/rule.js';
import { need } from '../../../../engine/unknown.js';
import type { LogFact } from '../../../../facts/person.js';
import { touchesNight } from '../../../../sky/nights.js';
import { downBeforeNight, flyByDay, NIGHT_PARAMETERS } from '../../../common/shared/by-day.js';
import { byWhomItSpeaksOf, carries } from './carried.js';
import { landingsRemedies } from './landings-remedies.js';
import { countRecent, sameKind, upTo, type RecencyCount } from './recent-landings.js';

type Branch = 'nobody-carried' | 'enough' | 'day-only' | 'short' | 'short-for-crew';
type Reads = 'pic.log' | 'aircraft.type';

const READING =
  'A landing exactly 90 days before the flight counts. The window is that of every airfield of the route, at the time of the flight. Simulators and the exceptions of 61.57(e) are not counted. Who is carried is read as by day.';

const NOTHING: RecencyCount = { takeoffs: 0, landings: 0, enough: false, through: null, counted: [] };

/**
 * 14 CFR 61.57(b): passengers (since 2024-12-02 anybody carried) between one hour after sunset and one hour before sunrise need three take-offs and three
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
    'short-for-crew': {
      status: 'short',
      says: 'The flight enters the night with a learner or a second pilot, who is carried too: {takeoffs} of {needed} night take-offs and {landings} of {needed} night full-stop landings{how} in the preceding {days} days.',
    },
    short: {
      status: 'short',
      says: 'The flight enters the night with passengers: {takeoffs} of {needed} night take-offs and {landings} of {needed} night full-stop landings{how} in the preceding {days} days.',
    },
  },
  bodies: byWhomItSpeaksOf<Branch>('14 CFR 61.57(b)', { before: READING, since: READING }, judge),
});

function judge(
  f: FactView<Reads>,
  moment: Moment,
  p: Parameters,
  take: Take<Branch>,
  anybody: boolean,
): Judgement {
  if (!carries(f, anybody)) return take('nobody-carried');
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
    f.crew.passengers > 0 ? 'short' : 'short-for-crew',
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
          anybody,
          instead: flyByDay(moment, route, 'passenger'),
        }),
    },
  );
}
