import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import { defineRule, type FactView, type Judgement, type Take } from '../../../../engine/rule.js';
import type { LogFact } from '../../../../facts/person.js';
import { byWhomItSpeaksOf, carries } from './carried.js';
import { countRecent, sameKind, upTo } from './recent-landings.js';
import { landingsRemedies } from './landings-remedies.js';

type Branch = 'nobody-carried' | 'enough' | 'short' | 'short-for-crew';
type Reads = 'pic.log' | 'aircraft.type';

/**
 * 14 CFR 61.57(a): to carry passengers, and since 2024-12-02 to carry anybody, the pilot in command needs three take-offs
 * and three landings within the preceding 90 days, as sole manipulator of the controls, in an aircraft of the same
 * category and class (and type, if a type rating is required); in a tailwheel airplane the landings must be to a full stop
 * in a tailwheel airplane. It does not bind a pilot who carries nobody.
 */
export const passengerRecencyDay = defineRule({
  id: 'recency.passengers.day',
  title: 'Recent take-offs and landings to carry passengers',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.log', 'aircraft.type'],
  parameters: ['us.passenger-recency.days', 'us.passenger-recency.count'],
  branches: {
    'nobody-carried': {
      status: 'not-applicable',
      says: 'No passengers are carried, so no recent landings are asked for.',
    },
    enough: {
      status: 'met',
      says: '{takeoffs} take-offs and {landings} landings in the preceding {days} days; good through {through}.',
    },
    short: {
      status: 'short',
      says: '{takeoffs} of {needed} take-offs and {landings} of {needed} landings{how} in the preceding {days} days.',
    },
    'short-for-crew': {
      status: 'short',
      says: 'A learner or a second pilot is carried too: {takeoffs} of {needed} take-offs and {landings} of {needed} landings{how} in the preceding {days} days.',
    },
  },
  bodies: byWhomItSpeaksOf<Branch>(
    '14 CFR 61.57(a)',
    {
      before: reading('a learner is no passenger'),
      since: reading(
        'since 2024-12-02 everybody else aboard is carried, a learner and a required safety pilot too; the new exception of 61.57(e) for training that restores the recency of a learner who could otherwise act as pilot in command was read at second hand only, and is not counted',
      ),
    },
    judge,
  ),
});

function reading(who: string): string {
  return `A landing exactly 90 days before the flight counts; the flight is tested to its end. Aircraft certificated for more than one pilot are not told apart: only who is carried calls for it; ${who}.`;
}

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
  const give = (entry: LogFact) => {
    if (!sameKind(entry, type)) return { takeoffs: 0, landings: 0 };
    if (!type.tailwheel) return { takeoffs: entry.takeoffs, landings: entry.landings };
    return entry.tailwheel
      ? { takeoffs: entry.takeoffs, landings: entry.fullStopLandings }
      : { takeoffs: 0, landings: 0 };
  };
  const count = countRecent(f.get('pic.log'), moment, days, needed, give);
  const values = {
    takeoffs: count.takeoffs,
    landings: count.landings,
    days,
    needed,
    through: count.through ?? '',
    how: type.tailwheel ? ' to a full stop in a tailwheel airplane' : '',
  };
  if (count.enough) return take('enough', values, { counted: count.counted });
  return take(
    f.crew.passengers > 0 ? 'short' : 'short-for-crew',
    { ...values, ...upTo(needed, count) },
    {
      counted: count.counted,
      remedies: () => landingsRemedies({ type, needed, days, night: false, moment, f, anybody }),
    },
  );
}
