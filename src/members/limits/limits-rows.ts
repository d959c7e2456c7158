import { type EntityManager, In } from 'typeorm';
import { show } from '../../platform/http/views.js';
import type { LocalDate } from '../../rules/index.js';
import { Member } from '../member.entity.js';
import { LimitsSideView, LimitsView } from './limits.dto.js';
import { PersonalLimits } from './limits.entity.js';

export const LIMITS = { entity: PersonalLimits, noun: 'set of limits' };

/** What one side set, as far as it still counts. */
export interface Side {
  inForce: PersonalLimits | null;
  toCome: PersonalLimits[];
}

/** A member's rows in the order in which they were written, parted by who set them. */
export async function sidesOf(
  em: EntityManager,
  of: { clubId: string; memberId: string },
  today: LocalDate,
): Promise<{ own: Side; instructor: Side }> {
  const rows = await em.find(PersonalLimits, { where: of, order: { recordedAt: 'ASC', id: 'ASC' } });
  const isOwn = (row: PersonalLimits): boolean => row.setById === row.memberId;
  return {
    own: sideOf(rows.filter(isOwn), today),
    instructor: sideOf(
      rows.filter((row) => !isOwn(row)),
      today,
    ),
  };
}

/** A row counts from its first day until a later one begins, whatever was written before it. */
function sideOf(rows: readonly PersonalLimits[], today: LocalDate): Side {
  const counting: PersonalLimits[] = [];
  for (const row of [...rows].reverse())
    if (counting[0] === undefined || row.validFrom < counting[0].validFrom) counting.unshift(row);
  return {
    inForce: counting.filter(({ validFrom }) => validFrom <= today).at(-1) ?? null,
    toCome: counting.filter(({ validFrom }) => validFrom > today),
  };
}

/** Both sides as the API shows them. */
export async function sideViews(
  em: EntityManager,
  clubId: string,
  sides: { own: Side; instructor: Side },
): Promise<{ own: LimitsSideView; instructor: LimitsSideView }> {
  const rows = [sides.own, sides.instructor].flatMap(({ inForce, toCome }) => [
    ...(inForce ? [inForce] : []),
    ...toCome,
  ]);
  const people = await em.find(Member, {
    where: { clubId, id: In([...new Set(rows.map(({ setById }) => setById))]) },
    select: { id: true, name: true },
  });
  const view = (row: PersonalLimits): LimitsView => {
    const { id, name } = people.find((one) => one.id === row.setById)!;
    return show(LimitsView, row, { setBy: { id, name } });
  };
  const side = ({ inForce, toCome }: Side): LimitsSideView => ({
    inForce: inForce && view(inForce),
    toCome: toCome.map(view),
  });
  return { own: side(sides.own), instructor: side(sides.instructor) };
}
