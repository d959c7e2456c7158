import { Injectable } from '@nestjs/common';
import { type EntityManager, IsNull } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { gatherClub } from '../../decisions/gather/club.js';
import { Aircraft } from '../../fleet/aircraft/aircraft.entity.js';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import {
  addDays,
  hundredHoursOn,
  localDateOf,
  Prices,
  rulesetFor,
  toSeconds,
  type LocalDate,
} from '../../rules/index.js';
import { ForecastService } from '../forecast/forecast.service.js';
import type { Pin, Problem } from '../plan/problem.js';
import { UpgradeWish } from '../wishes/wish.entity.js';
import { weekOf } from './needs-of.js';
import { pinsOf, problemOf, type PolicyNumber, type ShopSpan, type UseOf } from './problem-of.js';
import { planApart } from './run-apart.js';
import { MOST_PLANNED, type SeasonBody, type SeasonView } from './season.dto.js';
import { seasonView } from './season.views.js';
import { tooSoonSays } from './words.js';
import { valueRefused } from '../../platform/problems/value-refused.js';

/** Plans shop visits: nothing overdue, least flying displaced. A plan is a proposal; nothing is booked by it. */
@Injectable()
export class SeasonService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly forecasts: ForecastService,
  ) {}

  /** @throws ProblemException 422 for a pin outside the span or of an aircraft the club does not have. */
  async plan(
    user: SignedIn,
    { weeks = MOST_PLANNED, pins = [], closed = [], searchSeconds }: SeasonBody,
  ): Promise<SeasonView> {
    const forecast = await this.forecasts.forecast(user, { weeks });
    const mondays = forecast.aircraft[0]?.weeks.map(({ monday }) => monday) ?? [];
    const wanted = pins.map(({ aircraftId, on }, index): Pin => {
      const week = insideSpan(on, mondays, `pins[${index}].on`);
      if (!forecast.aircraft.some((one) => one.aircraftId === aircraftId))
        throw valueRefused(
          `pins[${index}].aircraftId`,
          `The club has no aircraft ${aircraftId}. Check the id.`,
        );
      return { aircraftId, week };
    });
    const shut = new Set(closed.map(({ on }, index) => insideSpan(on, mondays, `closed[${index}].on`)));
    const known = await this.db.run(user.clubId, (em) => this.read(em, user.clubId, mondays), {
      readOnly: true,
    });
    const problem = problemOf({
      ...{ forecast, wishes: known.wishes, uses: known.uses, policy: known.policy, closed: shut },
      pins: distinct([...known.booked, ...wanted]),
      hundredHours: hundredHoursOn(forecast.today),
    });
    const season = await planApart({ problem, booked: distinct(known.booked), mostSeconds: searchSeconds });
    return seasonView(problem, season, { tooSoon: tooSoon(problem), booked: known.booked });
  }

  private async read(
    em: EntityManager,
    clubId: string,
    mondays: readonly LocalDate[],
  ): Promise<{ wishes: UpgradeWish[]; uses: UseOf[]; booked: Pin[]; policy: PolicyNumber }> {
    const now = this.clock.now();
    const { zone, jurisdiction, policy } = await gatherClub(em, now);
    const prices = new Prices(rulesetFor(jurisdiction, policy).book, localDateOf(toSeconds(now), zone));
    const spans: ShopSpan[] = await em.query(
      `SELECT b.aircraft_id AS "aircraftId", (lower(b.during) AT TIME ZONE $2)::date::text AS "from",
          ((upper(b.during) - interval '1 second') AT TIME ZONE $2)::date::text AS "to"
         FROM bookings b WHERE b.club_id = bellcrank_club() AND b.kind = 'maintenance' AND b.occupies
          AND upper(b.during) > $1::timestamptz ORDER BY lower(b.during), b.id`,
      [now, zone],
    );
    const aircraft = await em.findBy(Aircraft, { clubId });
    return {
      wishes: await em.find(UpgradeWish, { where: { clubId, doneOn: IsNull() }, order: { id: 'ASC' } }),
      uses: aircraft.map(({ id, instructionForHire, carriesForHire }) => ({
        ...{ aircraftId: id, instructs: instructionForHire, hires: carriesForHire },
      })),
      booked: spans.flatMap((span) => pinsOf(span, mondays)),
      policy: (id) => prices.number(id),
    };
  }
}

/** Items of the plan that fall due before the first week the shop can take. */
function tooSoon({ needs, aircraft, weeks, shop }: Problem): string[] {
  const first = weeks[shop.firstWeek];
  if (first === undefined) return [];
  const nameOf = (id: string): string => aircraft.find((one) => one.id === id)!.name;
  return needs
    .filter(({ overdue }) => overdue)
    .map(({ title, aircraftId }) => tooSoonSays(title, nameOf(aircraftId), first));
}

const distinct = (pins: readonly Pin[]): Pin[] => [
  ...new Map(pins.map((pin) => [`${pin.aircraftId} ${pin.week}`, pin])).values(),
];

function insideSpan(on: LocalDate, mondays: readonly LocalDate[], field: string): number {
  const last = mondays.at(-1);
  if (last !== undefined && on >= mondays[0]! && on <= addDays(last, 6)) return weekOf(on, mondays);
  throw valueRefused(field, `${on} lies outside the weeks that are planned.`);
}
