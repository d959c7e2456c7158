import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../../accounts/current-user.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { ProblemException } from '../../platform/problems/index.js';
import { CAUTION, rulesetFor, toInstant, toSeconds, type FactSheet, type Policy } from '../../rules/index.js';
import { gatherSheets } from '../gather/sheets.js';
import { assertMayAsk, mightRead, notToAsk } from '../may-read.js';
import { aircraftTimeline, type Telling } from './aircraft-timeline.js';
import { Pace } from './pace.js';
import { pairsOf } from './pairs.js';
import { earliest } from './slots.js';
import { daysOf, firstFlight, spanOf } from './span.js';
import type { TimelineDto } from './timeline-request.dto.js';
import type { AircraftTimelineDto, SlotInDto, TimelinesDto } from './timeline.dto.js';

/** Aircraft times days of one question: a fleet of fifty over a year. */
export const MOST_AIRCRAFT_DAYS = 18_300;

/** Answers a question about a span. Nothing is stored: a timeline is no decision. */
@Injectable()
export class TimelinesService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** The answer at every departure of the span, for the aircraft named or for the whole fleet. */
  async ask(user: SignedIn, question: TimelineDto): Promise<TimelinesDto> {
    const { aircraftIds = null, from, to, durationMinutes, weather, join = 'detail', ...flight } = question;
    const memberId = whose(user, flight.memberId);
    const knownAt = this.clock.now();
    const spanAsked = { from, to, durationMinutes, weather };
    const span = spanOf(spanAsked, knownAt);
    const request = firstFlight(flight, spanAsked);
    const { sheets, policy } = await this.db.run(
      user.clubId,
      async (em) => {
        await assertMayAsk(em, user, { memberId, instructorId: flight.instructorId }, knownAt);
        return gatherSheets(em, { request, memberId, aircraftIds, knownAt });
      },
      { readOnly: true },
    );
    refuseTooMuch(sheets.length, daysOf(span));
    const durationSeconds = durationMinutes * 60;
    const notBefore = toSeconds(knownAt);
    const aircraft = await this.follow(sheets, policy, {
      ...{ viewer: user, span, join, notBefore, durationSeconds },
    });
    return {
      ...{ memberId, from: toInstant(span.from), to: toInstant(span.to), durationMinutes, knownAt, join },
      ...{ aircraft, across: across(aircraft), caution: CAUTION },
    };
  }

  /** In the order of the sheets; others get their turn in between. */
  private async follow(
    sheets: readonly FactSheet[],
    policy: Policy,
    telling: Omit<Telling, 'ruleset'>,
  ): Promise<AircraftTimelineDto[]> {
    const [first] = sheets;
    if (!first) return [];
    const ruleset = rulesetFor(first.jurisdiction, policy);
    const member = first.people[first.flight.memberId]!;
    const byId = new Map(sheets.map((sheet) => [sheet.aircraft.id, sheet]));
    const told = new Map<string, AircraftTimelineDto>();
    const pace = new Pace();
    for (const pair of pairsOf({ sheets, members: [member], ruleset, span: telling.span })) {
      if (pair) {
        const sheet = byId.get(pair.aircraftId)!;
        told.set(pair.aircraftId, aircraftTimeline(pair, sheet, { ...telling, ruleset }));
      }
      await pace.breathe();
    }
    return sheets.map((sheet) => told.get(sheet.aircraft.id)!);
  }
}

/** Asked before anything is looked up. */
function whose(user: SignedIn, memberId = user.memberId): string {
  if (mightRead(user, memberId)) return memberId;
  throw notToAsk(user);
}

function refuseTooMuch(aircraft: number, days: number): void {
  if (aircraft * days <= MOST_AIRCRAFT_DAYS) return;
  throw new ProblemException('span-too-large', {
    detail:
      `${aircraft} aircraft over ${days} days are more than is answered at once (${MOST_AIRCRAFT_DAYS} aircraft-days). ` +
      'Name the aircraft you mean, or ask for a shorter span.',
    field: 'to',
  });
}

function across(aircraft: readonly AircraftTimelineDto[]): SlotInDto | null {
  return earliest(
    aircraft.flatMap(({ aircraft: names, firstSlot }) =>
      firstSlot === null ? [] : [{ ...firstSlot, aircraft: names }],
    ),
  );
}
