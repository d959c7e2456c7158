import type { EntityManager } from 'typeorm';
import { hasAnyRole } from '../../accounts/roles.js';
import { DayField, IdField, TextField, WordField, TextsField } from '../../platform/http/fields.js';
import { ChangesOf } from '../../platform/http/views.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import type { EndorsementKind } from '../../rules/facts/person.js';
import { MemberRole } from '../member.entity.js';
import { isOwn } from '../members.access.js';
import { ENDORSEMENT_KINDS } from '../vocabulary.js';
import { Endorsement } from './endorsement.entity.js';
import { PaperViewOf, showPaper } from './paper.dto.js';
import { paperKind } from './paper-kind.js';

/** An instructor's endorsement (14 CFR 61.31, 61.87, 61.93 and others). */
export class EndorsementDto {
  @WordField(ENDORSEMENT_KINDS, {
    description:
      "The 'grandfather-…' kinds record pilot-in-command time logged on the date, before the endorsement was asked for",
  })
  kind: EndorsementKind;

  @DayField()
  endorsedOn: string;

  @TextField({ nullable: true, max: 100, description: 'Make and model it is limited to' })
  makeModel?: string | null;

  @TextsField({
    optional: true,
    description: 'Airfield codes it is limited to',
    pattern: /^[A-Z0-9]{2,8}$/,
    says: 'an airfield code of 2 to 8 capital letters or digits',
  })
  airfields?: string[];

  @DayField({ nullable: true, description: 'Last valid date' })
  expiresOn?: string | null;

  @IdField({
    nullable: true,
    description: "The club's instructor who gave it; null for somebody outside the club",
  })
  givenBy?: string | null;
}

/** Changes to an endorsement. */
export class EndorsementChanges extends ChangesOf(EndorsementDto) {}

/** An endorsement as the API shows it. */
export class EndorsementView extends PaperViewOf(EndorsementDto) {}

/** Endorsements. One that an instructor gives to another member is verified with that. */
export const ENDORSEMENTS = paperKind<Endorsement, EndorsementDto, EndorsementView>({
  path: 'endorsements',
  name: { one: 'Endorsement', many: 'Endorsements' },
  noun: 'endorsement',
  entity: Endorsement,
  draft: EndorsementDto,
  patch: EndorsementChanges,
  view: EndorsementView,
  byInstructors: true,
  values: (draft) => ({ ...draft }),
  async complete(em, { by, memberId, isNew, stamp }, { givenBy }) {
    const gives = isNew && hasAnyRole(by, 'instructor') && !isOwn(by, memberId);
    if (gives && (givenBy === undefined || givenBy === by.memberId))
      return { givenBy: by.memberId, ...stamp };
    if (typeof givenBy === 'string') await assertInstructor(em, by.clubId, memberId, givenBy);
    return {};
  },
  views: async (_em, rows) => rows.map((row) => showPaper(EndorsementView, row)),
});

async function assertInstructor(
  em: EntityManager,
  clubId: string,
  memberId: string,
  givenBy: string,
): Promise<void> {
  if (givenBy === memberId) {
    throw new ProblemException('not-an-instructor', {
      detail: 'Nobody endorses their own log.',
      field: 'givenBy',
    });
  }
  const found = await em.existsBy(MemberRole, { clubId, memberId: givenBy, role: 'instructor' });
  if (!found) throw new ProblemException('not-an-instructor', { field: 'givenBy' });
}
