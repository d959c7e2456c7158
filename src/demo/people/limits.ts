import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { PersonalLimitsRow } from '../rows.js';
import { at, clock, type When } from '../when.js';
import { byKey, type Person } from './person.js';

type Figures = Omit<
  PersonalLimitsRow,
  'club_id' | 'id' | 'recorded_at' | 'member_id' | 'set_by' | 'valid_from' | 'binds_through' | 'note'
>;

const NONE: Figures = {
  ...{ wind_kt: null, crosswind_kt: null, gust_spread_kt: null, ceiling_day_ft_agl: null },
  ...{ ceiling_night_ft_agl: null, visibility_day_sm: null, visibility_night_sm: null },
  ...{ runway_ft: null, night: null },
};

/** Two pilots with limits of their own, and a student for whom an instructor set them. */
const SET: readonly {
  key: string;
  daysAgo: number;
  figures: Partial<Figures>;
  taught?: true;
  note: string;
}[] = [
  {
    ...{ key: 'ada', daysAgo: 70, note: 'To be looked at again after some crosswind landings' },
    figures: {
      ...{ wind_kt: 18, crosswind_kt: 8, gust_spread_kt: 8, ceiling_day_ft_agl: 2000 },
      ...{ visibility_day_sm: 5, runway_ft: 2500, night: false },
    },
  },
  {
    ...{ key: 'hana', daysAgo: 40, note: '' },
    figures: { crosswind_kt: 12, ceiling_night_ft_agl: 4000, visibility_night_sm: 8 },
  },
  {
    ...{
      key: 'ines',
      daysAgo: 30,
      taught: true,
      note: 'Solo in the circuit; more wind after the next lesson',
    },
    figures: {
      ...{ wind_kt: 12, crosswind_kt: 5, gust_spread_kt: 5, ceiling_day_ft_agl: 2500 },
      ...{ visibility_day_sm: 6, runway_ft: 3000, night: false },
    },
  },
];

/** Limits beyond the law, as told above. */
export function limitsRows(people: readonly Person[], when: When): PersonalLimitsRow[] {
  const teacher = people.find(({ story }) => story.instructor)!;
  return SET.map(({ key, daysAgo, figures, taught, note }) => {
    const person = byKey(people, key);
    const on = when.daysAgo(daysAgo);
    return {
      ...{ club_id: DEMO_CLUB_ID, id: demoId(person.id, 'limits', daysAgo), member_id: person.id },
      ...{ set_by: taught ? teacher.id : person.id, valid_from: on, binds_through: null },
      ...{ ...NONE, ...figures, note, recorded_at: at(on, clock(20)) },
    };
  });
}
