/** Flying held against an insurer's minimums, in tenths of an hour. Time in simulators and training devices is none. */
import { addDays, type LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import type { LogBeforeFact, LogFact } from '../../../facts/person.js';

/** What an entry of the log and a sum of earlier ones have in common. */
type Flown = Pick<LogFact, 'modelId' | 'category' | 'class' | 'tailwheel' | 'role'>;
/** Whether it is of the kind asked for. */
export type Serves = (flown: Flown) => boolean;

/** The log of the sheet, and the sums of what it no longer lists. */
export interface WholeLog {
  entries: readonly LogFact[];
  before: LogBeforeFact;
}

/** Everything flown of a kind before the flight, whatever the role. It never becomes less, so only a lack of it is watched. */
export function flownInAll(
  { entries, before }: WholeLog,
  serves: Serves,
  needed: number,
  moment: Moment,
): number {
  const untold = moment.aside();
  const ofKind = entries.filter((entry) => entry.device === null && serves(entry));
  const flown = [
    ...before.sums.filter(serves),
    ...ofKind.filter((one) => untold.departsAtOrAfter(one.departedAt)),
  ];
  const tenths = flown.reduce((sum, { totalTenths }) => sum + totalTenths, 0);
  if (tenths < needed) for (const { departedAt } of ofKind) moment.departsAtOrAfter(departedAt);
  return tenths;
}

/** What was flown in the days before the flight; `through` is the last day on which it is still enough. */
export function flownLately(
  entries: readonly LogFact[],
  asked: { tenths: number; days: number },
  moment: Moment,
): { tenths: number; through: LocalDate | null } {
  const untold = moment.aside();
  const flying = entries.filter(({ device }) => device === null);
  const recent = flying
    .filter(
      ({ on, departedAt }) => untold.endsWithinDaysOf(on, asked.days) && untold.departsAtOrAfter(departedAt),
    )
    .sort((a, b) => (`${a.on} ${a.id}` < `${b.on} ${b.id}` ? 1 : -1));
  let tenths = 0;
  let governing: LocalDate | null = null;
  for (const { on, totalTenths } of recent) {
    if (tenths < asked.tenths) governing = on;
    tenths += totalTenths;
  }
  if (tenths < asked.tenths || governing === null) {
    for (const { departedAt } of flying) moment.departsAtOrAfter(departedAt);
    return { tenths, through: null };
  }
  // While it is enough, only the oldest flight it rests on can end it.
  moment.endsWithinDaysOf(governing, asked.days);
  return { tenths, through: addDays(governing, asked.days) };
}
