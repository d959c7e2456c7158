import { addDays, type LocalDate } from '../../../calendar/dates.js';
import { defineRule } from '../../../engine/rule.js';
import { moneyWords } from '../../../explain/money-words.js';
import type { UnpaidFact } from '../../../facts/person.js';

/**
 * Club rule: what was charged is paid. An account is in arrears from the day on which more than the club's limit is overdue, and
 * may book for a while longer. An officer's word on the account (`club.standing`) is a hold of its own beside this.
 */
export const chargesPaid = defineRule({
  id: 'club.charges_paid',
  title: 'Charges paid',
  weight: 'club',
  binds: 'member',
  reads: ['member.unpaid'],
  parameters: ['club.charges.due-days', 'club.charges.arrears-limit', 'club.standing.arrears-days'],
  branches: {
    paid: { status: 'met', says: 'No charge of the club is unpaid.' },
    little: {
      status: 'met',
      says: 'Of what the club charged, {amount} is unpaid, no more than it lets stand.',
    },
    'not-due': {
      status: 'met',
      says: 'Of what the club charged, {amount} is unpaid and to be paid through {through}.',
    },
    tolerated: {
      status: 'met',
      says: 'Charges of the club are overdue since {since}; it allows bookings through {through}.',
    },
    arrears: {
      status: 'short',
      says: 'Charges of the club are overdue since {since}, longer than the {days} days it allows; {amount} is unpaid.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Club handbook, sections 2.2 and 2.6',
        status: 'club paper',
        reading:
          'Money received pays the oldest charges first. A corrected charge counts from the day of the first. An amount equal to the limit is within it.',
      },
      judge(f, moment, p, take) {
        const unpaid = oldestFirst(f.get('member.unpaid'));
        if (unpaid[0] === undefined) return take('paid');
        const unit = unpaid[0];
        const total = unpaid.reduce((sum, one) => sum + one.unpaidMinor, 0);
        const counted = unpaid.map(({ id, on }) => ({ id, on, what: 'unpaid charge' }));
        const amount = moneyWords(total, unit);
        const limitMinor = p.number('club.charges.arrears-limit') * unit.minorPerUnit;
        const over = chargedOver(unpaid, limitMinor);
        if (over === null) return take('little', { amount }, { counted });
        const paidBy = addDays(over, p.number('club.charges.due-days'));
        if (moment.endsOnOrBefore(paidBy)) return take('not-due', { amount, through: paidBy }, { counted });
        const since = addDays(paidBy, 1);
        const days = p.number('club.standing.arrears-days');
        const through = addDays(since, days);
        if (moment.endsOnOrBefore(through)) return take('tolerated', { since, through }, { counted });
        return take(
          'arrears',
          { since, days, amount },
          {
            counted,
            remedies: () => [
              {
                act: 'settle-account',
                title: 'Settle the account.',
                by: 'member',
                effects: [{ op: 'set', fact: 'member.unpaid', value: [] }],
              },
            ],
          },
        );
      },
    },
  ],
});

function oldestFirst(unpaid: readonly UnpaidFact[]): UnpaidFact[] {
  const key = ({ on, id }: UnpaidFact): string => `${on} ${id}`;
  return [...unpaid].sort((a, b) => (key(a) < key(b) ? -1 : 1));
}

/** The day of the charge with which more than the limit is unpaid; null where no more than that is. */
function chargedOver(unpaid: readonly UnpaidFact[], limitMinor: number): LocalDate | null {
  let sum = 0;
  for (const { on, unpaidMinor } of unpaid) {
    sum += unpaidMinor;
    if (sum > limitMinor) return on;
  }
  return null;
}
