import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../../accounts/current-user.js';
import { Pace } from '../../decisions/timeline/pace.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { CAUTION, localDateOf, startOfDay, toSeconds, type Answer } from '../../rules/index.js';
import { lapsesOf, type Lapse } from './follow.js';
import { gatherBoard, type BoardFacts } from './gather-board.js';
import type { LackingView, LapseCost, LapsesQuery, LapsesView, LapseView } from './lapses.dto.js';

/** Statements here read a whole club. */
const STATEMENT_TIMEOUT_MS = 60_000;
const LOST: readonly Answer[] = ['no', 'ask-officer', 'dual-only'];
const DAY = 86_400;

/** Who lapses next, and which booked flights that costs. Nothing is stored: a board is no decision. */
@Injectable()
export class LapsesService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** @throws ProblemException as `gatherBoard`. */
  async read({ clubId }: SignedIn, query: LapsesQuery): Promise<LapsesView> {
    const knownAt = this.clock.now();
    const flight = query.flight ?? 'day-passengers';
    const asked = { flight, knownAt, through: query.through, aircraftId: query.aircraftId };
    const facts = await this.db.run(clubId, (em) => gatherBoard(em, asked), {
      ...{ readOnly: true, statementTimeoutMs: STATEMENT_TIMEOUT_MS },
    });
    const pace = new Pace();
    const all: { lapse: Lapse; memberName: string }[] = [];
    for (const member of facts.members) {
      for (const lapse of lapsesOf(member, facts)) all.push({ lapse, memberName: member.name });
      await pace.breathe();
    }
    const lapses = all
      .flatMap(({ lapse, memberName }) =>
        lapse.on === null ? [] : [lapseView(lapse, lapse.on, memberName, facts)],
      )
      .sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : a.memberName.localeCompare(b.memberName, 'en')));
    return {
      ...{ knownAt, from: facts.first, through: facts.last, flight, members: facts.members.length },
      ...{ lapses, lacking: lackingOf(all.map(({ lapse }) => lapse)), caution: CAUTION },
    };
  }
}

function lapseView(lapse: Lapse, on: string, memberName: string, facts: BoardFacts): LapseView {
  const { memberId, rule, title, weight, says, aircraftIds } = lapse;
  const { zone } = facts.sheets[0]!;
  const every = aircraftIds.length === facts.sheets.length;
  const named = aircraftIds.map((id) => facts.registrations.get(id)!).sort();
  const inDays = Math.round((startOfDay(on, zone) - startOfDay(facts.first, zone)) / DAY);
  return {
    ...{ memberId, memberName, rule, title, weight, on, inDays, says },
    ...{ aircraft: every ? null : named, costs: costsOf(lapse, on, zone, facts) },
  };
}

/** Flights this person has booked after the lapse which the rule stands in the way of when judged at their departure. */
function costsOf(
  lapse: Lapse,
  on: string,
  zone: string,
  { bookings, registrations }: BoardFacts,
): LapseCost[] {
  return bookings
    .filter(
      ({ memberId, aircraftId, departs, answer, because }) =>
        memberId === lapse.memberId &&
        lapse.aircraftIds.includes(aircraftId) &&
        localDateOf(toSeconds(departs), zone) >= on &&
        LOST.includes(answer) &&
        because.some(({ rule }) => rule === lapse.rule),
    )
    .map(({ bookingId, aircraftId, departs, answer, because }) => ({
      ...{ bookingId, departs, answer, registration: registrations.get(aircraftId)! },
      alone: because.every(({ rule }) => rule === lapse.rule),
    }));
}

function lackingOf(lapses: readonly Lapse[]): LackingView[] {
  const found = new Map<string, { title: string; who: Set<string> }>();
  for (const { rule, title, on, memberId } of lapses) {
    if (on !== null) continue;
    const one = found.get(rule) ?? { title, who: new Set() };
    one.who.add(memberId);
    found.set(rule, one);
  }
  return [...found]
    .map(([rule, { title, who }]) => ({ rule, title, members: who.size }))
    .sort((a, b) => b.members - a.members || (a.rule < b.rule ? -1 : 1));
}
