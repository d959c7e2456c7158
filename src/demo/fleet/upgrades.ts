import type { Instant } from '../../rules/index.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { UpgradeWishRow } from '../rows/maintenance.js';
import type { When } from '../when.js';
import { aircraftBy, type AircraftKey } from './aircraft.js';

interface Wished {
  aircraft: AircraftKey;
  title: string;
  shopDays: number;
  worthHours: number;
  partsInDays: number | null;
  withAnnual: boolean;
}

/** What the committee would like to see done, next time a panel is open. */
const WISHED: readonly Wished[] = [
  {
    aircraft: 'sprig-1',
    title: 'Electronic attitude display',
    shopDays: 3,
    worthHours: 30,
    partsInDays: 40,
    withAnnual: true,
  },
  {
    aircraft: 'traverse',
    title: 'Engine monitor',
    shopDays: 2,
    worthHours: 18,
    partsInDays: null,
    withAnnual: true,
  },
  {
    aircraft: 'lindle',
    title: 'Landing lights of diodes',
    shopDays: 1,
    worthHours: 6,
    partsInDays: 21,
    withAnnual: false,
  },
];

/** Upgrades wished for. */
export function upgradeWishRows(when: When, recordedAt: Instant): UpgradeWishRow[] {
  return WISHED.map((one) => ({
    club_id: DEMO_CLUB_ID,
    id: demoId('upgrade', one.title),
    aircraft_id: aircraftBy(one.aircraft).id,
    title: one.title,
    shop_days: one.shopDays,
    worth_hours: one.worthHours,
    parts_on: one.partsInDays === null ? null : when.daysAgo(-one.partsInDays),
    with_annual: one.withAnnual,
    done_on: null,
    recorded_at: recordedAt,
  }));
}
