import type { Instant } from '../rules/index.js';
import { DEMO_CLUB_ID, demoId } from './ids.js';
import type { Person } from './people/person.js';
import type { ClubRuleRow } from './rows.js';
import { at, clock, type When } from './when.js';

/** What a rule of the demo club says; drafts have no day. */
interface Written {
  slug: string;
  title: string;
  weight: 'club' | 'advice';
  appliesWhen: string;
  requirement: string;
  message: string;
  condition: string | null;
  document: string;
  monthsInForce: number | null;
}

const WRITTEN: readonly Written[] = [
  {
    slug: 'grass-crosswind',
    title: 'Grass only with little wind across',
    weight: 'club',
    appliesWhen: 'flight.unpavedOnly',
    requirement: 'wind.landingCrosswindKt <= 10.0',
    message: '{wind.landingCrosswindKt} kt blow across the grass; the club lands there with 10 kt or less.',
    condition: 'Land on the grass only with 10 kt or less across it.',
    document: 'Quill Mesa handbook, section 7.2',
    monthsInForce: 8,
  },
  {
    slug: 'after-a-break',
    title: 'A lesson after a long break',
    weight: 'advice',
    appliesWhen: '!flight.instruction',
    requirement: 'flight.daysSince(pilot.lastFlightOn) <= 45',
    message: 'Your last flight was on {string(pilot.lastFlightOn)}: consider taking an instructor along.',
    condition: null,
    document: "Quill Mesa safety officer's letter of the spring",
    monthsInForce: 5,
  },
  {
    slug: 'quiet-sundays',
    title: 'Quiet Sunday mornings',
    weight: 'club',
    appliesWhen: 'flight.weekday == "sunday"',
    requirement: '!flight.departsBefore("09:00")',
    message: 'On Sundays the first departure is at nine, for the neighbours’ sake.',
    condition: null,
    document: 'Quill Mesa committee, for the next meeting',
    monthsInForce: null,
  },
];

/** Two rules of the club's own in force, and a draft to try on what was decided. */
export function clubRuleRows(people: readonly Person[], when: When, recordedAt: Instant): ClubRuleRow[] {
  const officer = people.find((one) => one.story.roles?.includes('safety-officer'))!;
  return WRITTEN.map(({ slug, monthsInForce, appliesWhen, ...texts }): ClubRuleRow => {
    const from = monthsInForce === null ? null : when.monthsAgo(monthsInForce);
    return {
      club_id: DEMO_CLUB_ID,
      id: demoId('club-rule', slug),
      code: `club.own.${slug}`,
      version: 1,
      ...texts,
      applies_when: appliesWhen,
      state: from === null ? 'draft' : 'active',
      in_force_from: from,
      created_by: officer.id,
      activated_by: from === null ? null : officer.id,
      activated_at: from === null ? null : at(from, clock(8)),
      recorded_at: recordedAt,
    };
  });
}
