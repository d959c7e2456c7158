import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { MemberCheckRow } from '../rows.js';
import { at, clock, type When } from '../when.js';
import type { Person } from './person.js';
import { isStudent } from './story.js';

/** What the safety officer has seen: a document of everybody but the newest, and evidence of citizenship of those who learn. */
export function checkRows(people: readonly Person[], when: When): MemberCheckRow[] {
  const officer = people.find(({ story }) => story.roles?.includes('safety-officer'))!;
  const seen = (person: Person, kind: MemberCheckRow['kind'], daysGood: number | null): MemberCheckRow => {
    const on = when.daysAgo(Math.min(when.ago(person.joinedOn), 400));
    return {
      ...{ club_id: DEMO_CLUB_ID, id: demoId(person.id, 'check', kind), member_id: person.id, kind },
      ...{ seen_on: on, expires_on: daysGood === null ? null : when.daysAgo(-daysGood), seen_by: officer.id },
      recorded_at: at(on, clock(19)),
    };
  };
  const others = people.filter(({ id, joinedOn }) => id !== officer.id && when.ago(joinedOn) > 60);
  return [
    ...others.map((person) => seen(person, 'identity', 900)),
    ...others.filter(({ story }) => isStudent(story)).map((person) => seen(person, 'citizenship', null)),
  ];
}
