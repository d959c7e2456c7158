import { ApiPropertyOptional } from '@nestjs/swagger';
import { Shown, SwitchField } from '../../platform/http/fields.js';
import { IsLocalDate, Optional } from '../../platform/http/index.js';
import { PageQuery, PageShape } from '../../platform/http/pages.js';
import { EntryView } from '../ledger/ledger.dto.js';

/** Which days a statement is of; both among them. */
export class StatementQuery {
  @ApiPropertyOptional({ format: 'date', description: 'First day; left out: 90 days before the last' })
  @Optional()
  @IsLocalDate()
  from?: string;

  @ApiPropertyOptional({ format: 'date', description: 'Last day; left out: today' })
  @Optional()
  @IsLocalDate()
  to?: string;
}

/** An entry with what is needed to follow it. */
export class StatementEntryView extends EntryView {
  @Shown({ type: 'integer', description: 'What the account stood at after it' })
  balanceMinor: number;

  @Shown({ type: 'string', nullable: true, description: 'The aircraft flown' })
  registration: string | null;

  @Shown({ type: 'string', format: 'date-time', nullable: true })
  departedAt: string | null;

  @Shown({ type: 'string', format: 'date-time', nullable: true })
  arrivedAt: string | null;

  @Shown({ type: 'string', format: 'uuid', nullable: true, description: 'The entry that took it off' })
  reversedBy: string | null;
}

/** A member's account over some days. */
export class StatementView {
  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;

  @Shown({ type: 'string' })
  memberName: string;

  @Shown({ type: 'string', format: 'date' })
  from: string;

  @Shown({ type: 'string', format: 'date' })
  to: string;

  @Shown({ type: 'string', example: 'USD' })
  currency: string;

  @Shown({ type: 'integer', example: 100, description: 'How many of the smallest unit make one' })
  minorPerUnit: number;

  @Shown({ type: 'integer', description: 'What was owed before the first day; less than nothing: in credit' })
  openingMinor: number;

  @Shown({ type: 'integer', description: 'What was owed at the end of the last day' })
  closingMinor: number;

  @Shown({ type: 'integer', description: 'Of all there is today, what is overdue' })
  overdueMinor: number;

  @Shown({
    type: 'string',
    format: 'date',
    nullable: true,
    description: 'Through when the oldest unpaid charge is to be paid',
  })
  dueThrough: string | null;

  @Shown({ type: () => StatementEntryView, isArray: true, description: 'In the order they were entered' })
  entries: StatementEntryView[];

  @Shown({ type: 'string' })
  rounding: string;
}

/** Narrows the list of balances. */
export class BalancesQuery extends PageQuery {
  @SwitchField({ default: false, description: 'true: accounts that owe something only' })
  owing?: boolean;
}

/** How one account stands. */
export class BalanceView {
  @Shown({ type: 'string', format: 'uuid' })
  memberId: string;

  @Shown({ type: 'string' })
  memberName: string;

  @Shown({ type: 'integer', description: 'More: owed to the club. Less: in credit' })
  balanceMinor: number;

  @Shown({ type: 'integer' })
  overdueMinor: number;

  @Shown({
    type: 'string',
    format: 'date',
    nullable: true,
    description: 'Day of the oldest charge that is unpaid',
  })
  oldestUnpaidOn: string | null;
}

/** One page of balances, in order of members' ids. */
export class BalancePage extends PageShape {
  @Shown({ type: 'string', example: 'USD' })
  currency: string;

  @Shown({ type: 'integer', example: 100 })
  minorPerUnit: number;

  @Shown({ type: () => BalanceView, isArray: true })
  items: BalanceView[];
}
