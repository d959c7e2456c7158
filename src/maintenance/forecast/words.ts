/** Every sentence of the forecast. */
import { CAUTION, type LocalDate } from '../../rules/index.js';
import type { Bounds } from './backtest.js';

/** Said with every forecast. */
export const FORECAST_CAUTION = `A forecast is no limit: what is due is due by the records. ${CAUTION}`;

export interface ItemState {
  state: 'overdue' | 'never-done' | 'unknown' | 'settled' | 'running';
  leftTenths: number | null;
  throughOn: LocalDate | null;
  bookedTenths: number;
  slotOn: LocalDate | null;
}

const hours = (tenths: number): string => `${(tenths / 10).toFixed(1)} h`;

/** '9.4 h left, 11.0 h booked before the shop visit of 2026-04-12; good through 2026-06-30.' */
export function itemSays({ state, leftTenths, throughOn, bookedTenths, slotOn }: ItemState): string {
  if (state === 'settled') return 'Done; nothing more is due.';
  if (state === 'never-done') return 'Never done, as far as the records go.';
  if (state === 'unknown')
    return 'When it is due cannot be told: hours or dates of the last time are not on record.';
  const parts: string[] = [];
  if (leftTenths !== null) {
    const before = slotOn === null ? '' : ` before the shop visit of ${slotOn}`;
    const left = leftTenths < 0 ? `${hours(-leftTenths)} over` : `${hours(leftTenths)} left`;
    parts.push(`${left}, ${hours(bookedTenths)} booked${before}`);
  }
  if (throughOn !== null)
    parts.push(
      state === 'overdue' && leftTenths === null
        ? `was good through ${throughOn}`
        : `good through ${throughOn}`,
    );
  return `${parts.join('; ')}.`;
}

/** How the bounds were tested, for people. */
export function testSays(bounds: Bounds | null): string {
  if (bounds === null || bounds.coverage === null)
    return 'Too little has been flown on record to say how far off the forecast may be: no earliest and latest days are given.';
  const share = `${Math.round(bounds.coverage * 100)} %`;
  const error =
    bounds.medianErrorShare === null
      ? ''
      : ` Half of them were off by less than ${Math.round(bounds.medianErrorShare * 100)} % of the hours.`;
  return (
    `Tried on ${bounds.testedBy} forecasts of the club’s own past weeks, with bounds set by ${bounds.setBy} older ones: ` +
    `${share} of the outcomes lay within bounds made to hold 80 %.${error}`
  );
}
