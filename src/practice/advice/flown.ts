/** Practice records as the model of rust takes them. */
import type { LocalDate } from '../../rules/index.js';
import type { PracticeRecord } from '../records/practice-record.entity.js';
import type { Flown } from '../rust/index.js';
import type { PracticePolicy } from './policy.js';

/** The columns of a record that rust is worked out from. */
export type FlownRow = Omit<Flown, 'on' | 'good'> &
  Pick<PracticeRecord, 'within' | 'toStandard' | 'seenBy'> & { flownOn: LocalDate };

export const flownOf = (row: FlownRow, policy: Pick<PracticePolicy, 'ownWord'>): Flown => ({
  ...row,
  ...{ on: row.flownOn, good: goodOf(row, policy) },
});

/** To standard? What was measured outside is not, whoever says so; an instructor's word counts, one's own by policy. */
export function goodOf(
  { within, toStandard, seenBy }: Pick<PracticeRecord, 'within' | 'toStandard' | 'seenBy'>,
  { ownWord }: Pick<PracticePolicy, 'ownWord'>,
): boolean | null {
  if (within === false || toStandard === false) return false;
  if (within === true) return true;
  return toStandard === true && (seenBy === 'instructor' || ownWord) ? true : null;
}

/** Each manoeuvre with each piece of equipment it was flown with. */
export function equipmentIn(flown: readonly Flown[]): { manoeuvre: Flown['manoeuvre']; group: string }[] {
  const found = new Map<string, { manoeuvre: Flown['manoeuvre']; group: string }>();
  for (const { manoeuvre, equipment } of flown)
    for (const group of equipment ?? []) found.set(`${manoeuvre}|${group}`, { manoeuvre, group });
  return [...found.values()];
}
