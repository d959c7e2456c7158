import { Injectable } from '@nestjs/common';
import { Clock } from '../../platform/clock.js';
import { TenantDb } from '../../platform/database/tenant.js';
import type { AircraftForecast, ForecastItem } from '../../maintenance/forecast/forecast.dto.js';
import { MOST_WEEKS } from '../../maintenance/forecast/forecast.dto.js';
import { ForecastService } from '../../maintenance/forecast/forecast.service.js';
import { daysBetween } from '../../rules/index.js';
import { asMember } from '../as-member.js';
import { leadReached, leadTimes, type LeadTimes } from '../notice-policy.js';
import { postNotice } from '../outbox/post-notice.js';
import { remindOf } from './remind-of.js';

interface Due {
  subject: string;
  lead: string;
  title: string;
  says: string[];
}

/** Warns coordinators of inspections that fall due, by days and by hours, at the club's lead times, once at each. */
@Injectable()
export class MaintenanceWarnings {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly forecasts: ForecastService,
  ) {}

  /** @returns how many coordinators are told. */
  async warn(clubId: string): Promise<number> {
    const at = this.clock.now();
    const { leads, coordinators } = await this.db.run(
      clubId,
      async (em) => ({
        leads: await leadTimes(em, at),
        coordinators: (await em.query(
          `SELECT member_id AS id FROM member_roles
            WHERE club_id = bellcrank_club() AND role = 'maintenance-coordinator' ORDER BY 1`,
        )) as { id: string }[],
      }),
      { readOnly: true },
    );
    if (coordinators.length === 0 || leads.maintenanceDays.length + leads.maintenanceHours.length === 0)
      return 0;
    const weeks = Math.min(MOST_WEEKS, Math.ceil((leads.maintenanceDays.at(-1) ?? 7) / 7) + 1);
    const { aircraft, today } = await this.forecasts.forecast(
      asMember({ clubId, memberId: coordinators[0]!.id }),
      { weeks },
    );
    const due = aircraft.flatMap((one) =>
      one.items.flatMap((item) => warningsOf(one, item, { leads, today })),
    );
    if (due.length === 0) return 0;
    return this.db.run(clubId, async (em) => {
      let told = 0;
      for (const { id: memberId } of coordinators) {
        const fresh = await remindOf(em, memberId, due);
        // Reached by days and by hours at once, it is told once.
        const items = [...new Map(fresh.map((one) => [one.subject, one])).values()].map((one) => ({
          ...{ key: one.subject, title: one.title, says: one.says, link: '/maintenance' },
        }));
        await postNotice(em, {
          ...{ kind: 'maintenance-due', cause: 'maintenance', at: this.clock.now() },
          to: [{ memberId, items }],
        });
        if (items.length > 0) told += 1;
      }
      return told;
    });
  }
}

/** A warning for each kind of lead time that an item has reached. An overdue one has reached the smallest of both. */
export function warningsOf(
  { aircraftId, registration, slotOn }: Pick<AircraftForecast, 'aircraftId' | 'registration' | 'slotOn'>,
  item: ForecastItem,
  { leads, today }: { leads: LeadTimes; today: string },
): Due[] {
  if (item.state !== 'running' && item.state !== 'overdue') return [];
  const expected = item.likelyOn === null ? null : daysBetween(today, item.likelyOn);
  const days = [item.leftDays, expected].filter((left) => left !== null);
  const byDays = days.length === 0 ? null : leadReached(leads.maintenanceDays, Math.min(...days));
  const byHours = item.leftH === null ? null : leadReached(leads.maintenanceHours, item.leftH);
  // Done again, it is good through another day or another hour, and a thing to be told of anew.
  const subject = `due:${aircraftId}:${item.id}:${item.throughOn ?? ''}:${item.throughH ?? ''}`.slice(0, 300);
  const says = [
    item.says,
    ...(item.likelyOn === null ? [] : [`Likely due on ${item.likelyOn}.`]),
    ...(item.passing === null
      ? []
      : [`The booking of ${item.passing.departs} would be the first to pass its hours.`]),
    slotOn === null ? 'No shop visit is in the calendar.' : `A shop visit is booked for ${slotOn}.`,
  ];
  const title = `${registration}: ${item.title}`;
  return [
    ...(byDays === null ? [] : [{ subject, lead: `${byDays} d`, title, says }]),
    ...(byHours === null ? [] : [{ subject, lead: `${byHours} h`, title, says }]),
  ];
}
