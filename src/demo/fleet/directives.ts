import type { Instant } from '../../rules/index.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { DirectiveModelRow, DirectiveRow, ItemRow } from '../rows.js';
import type { When } from '../when.js';
import { MODELS, type ModelKey } from './models.js';

/** The invented authority of the demo's directives. */
const ISSUER = 'Q';

interface Published extends Pick<DirectiveRow, 'number' | 'title' | 'recurring'> {
  model: ModelKey;
  daysAgo: number;
  interval: Partial<Pick<DirectiveRow, 'calendar_months' | 'plain_months' | 'interval_tenths'>>;
  ferryProhibited?: boolean;
}

/** Invented airworthiness directives, by hours, by months and for once. */
const PUBLISHED = {
  hub: {
    ...{ number: '2023-14', title: 'Propeller hub inspection', model: 'traverse', daysAgo: 1000 },
    ...{ recurring: true, interval: { interval_tenths: 1000 }, ferryProhibited: true },
  },
  heater: {
    ...{ number: '2019-08', title: 'Cabin heater inspection', model: 'gemel', daysAgo: 2600 },
    ...{ recurring: true, interval: { calendar_months: 24, interval_tenths: 5000 } },
  },
  gear: {
    ...{ number: '2022-31', title: 'Landing gear actuator inspection', model: 'lindle', daysAgo: 1500 },
    ...{ recurring: true, interval: { plain_months: 12 } },
  },
  rail: {
    ...{ number: '2017-02', title: 'Seat rail stop, fitted once', model: 'sprig', daysAgo: 3500 },
    ...{ recurring: false, interval: {} },
  },
} as const satisfies Record<string, Published>;

export type DirectiveKey = keyof typeof PUBLISHED;

const idOf = (key: DirectiveKey): string => demoId('directive', PUBLISHED[key].number);

/** Title and columns of the item a directive asks for, as the service would write them. */
export function itemOf(key: DirectiveKey, when: When): { title: string; fields: Partial<ItemRow> } {
  const one: Published = PUBLISHED[key];
  return {
    title: `${one.number}: ${one.title}`,
    fields: {
      ...{ reference: `${ISSUER} ${one.number}`, recurring: one.recurring, directive_id: idOf(key) },
      ...{ ferry_prohibited: one.ferryProhibited ?? false, since: when.daysAgo(one.daysAgo) },
      ...one.interval,
    },
  };
}

/** The directives and the models they name. */
export function directiveRows(
  when: When,
  recordedAt: Instant,
): { directives: DirectiveRow[]; directive_models: DirectiveModelRow[] } {
  const keys = Object.keys(PUBLISHED) as DirectiveKey[];
  return {
    directives: keys.map((key) => {
      const one: Published = PUBLISHED[key];
      return {
        ...{ club_id: DEMO_CLUB_ID, id: idOf(key), issuer: ISSUER, number: one.number, title: one.title },
        ...{ effective_on: when.daysAgo(one.daysAgo), applies_to: 'aircraft', part_numbers: [], serials: [] },
        ...{ scope: 'all', calendar_months: null, plain_months: null, days: null, interval_tenths: null },
        ...one.interval,
        ...{ recurring: one.recurring, within_days: null, ferry_prohibited: one.ferryProhibited ?? false },
        recorded_at: recordedAt,
      };
    }),
    directive_models: keys.map((key) => ({
      ...{ club_id: DEMO_CLUB_ID, directive_id: idOf(key), model_id: MODELS[PUBLISHED[key].model].id },
    })),
  };
}
