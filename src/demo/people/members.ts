import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { DemoRows } from '../rows.js';
import { at, clock, type When } from '../when.js';
import { addDays } from '../../rules/index.js';
import type { Person } from './person.js';

/** Members, their roles, and an account each. */
export function memberRows(
  people: readonly Person[],
  when: When,
): Pick<DemoRows, 'members' | 'member_roles' | 'accounts'> {
  const joinedAt = (person: Person): string => at(person.joinedOn, clock(12));
  return {
    members: people.map((person) => {
      const { standing, membershipEndsInDays } = person.story;
      return {
        club_id: DEMO_CLUB_ID,
        id: person.id,
        name: person.story.name,
        email: person.email,
        birth_date: person.birthDate,
        standing: standing?.state ?? 'good',
        standing_since: standing ? when.daysAgo(standing.daysAgo) : person.joinedOn,
        membership_from: person.joinedOn,
        membership_through:
          membershipEndsInDays === undefined ? null : addDays(when.today, membershipEndsInDays),
        recorded_at: joinedAt(person),
      };
    }),
    member_roles: people.flatMap((person) =>
      (['member', ...(person.story.roles ?? [])] as const).map((role) => ({
        club_id: DEMO_CLUB_ID,
        member_id: person.id,
        role,
      })),
    ),
    accounts: people.map((person) => ({
      club_id: DEMO_CLUB_ID,
      id: demoId(person.id, 'account'),
      member_id: person.id,
      email: person.email,
      recorded_at: joinedAt(person),
    })),
  };
}
