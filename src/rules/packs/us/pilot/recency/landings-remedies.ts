import { addDays } from '../../../../calendar/dates.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Remedy } from '../../../../engine/remedy.js';
import type { AircraftType } from '../../../../facts/aircraft.js';
import type { FactView } from '../../../../engine/rule.js';
import { counted } from '../../../../explain/words.js';
import { plannedLandings } from '../../../planned-flight.js';
import { wouldServe } from '../../../common/people/plans.js';
import { leaveWhomItSpeaksOf } from './carried.js';

/**
 * Ways to satisfy passenger recency: fly the landings alone, do without the night (where that is what is asked), or leave
 * the passengers behind. The hypothetical landings are logged at the moment the facts were gathered.
 */
export function landingsRemedies(of: {
  type: AircraftType;
  needed: number;
  days: number;
  night: boolean;
  moment: Moment;
  f: Pick<FactView, 'flight' | 'crew'>;
  /** Everybody else aboard is carried, not passengers alone. */
  anybody: boolean;
  /** Ways around the rule that come before leaving anybody behind. */
  instead?: Remedy[];
}): Remedy[] {
  const { type, needed, days, night, moment, f, anybody, instead = [] } = of;
  const without = [...instead, ...leaveWhomItSpeaksOf(f, anybody)];
  if (!wouldServe(moment, (today) => addDays(today, days))) return without;
  const act = `fly-landings-${night ? 'night' : 'day'}`;
  const entry = plannedLandings(type, needed, night, moment);
  const where = night
    ? ' between one hour after sunset and one hour before sunrise, each to a full stop,'
    : '';
  return [
    {
      act,
      title: `Fly ${counted(needed, 'take-off')} and ${counted(needed, 'landing')}${where} without passengers.`,
      by: 'member',
      effects: [{ op: 'append', fact: 'pic.log', value: entry }],
    },
    ...without,
  ];
}
