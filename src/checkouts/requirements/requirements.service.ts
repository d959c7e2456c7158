import { Injectable } from '@nestjs/common';
import { type EntityManager, In } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { hasAnyRole } from '../../accounts/roles.js';
import { MODELS } from '../../fleet/models/models.service.js';
import { requireReference } from '../../fleet/references.js';
import { MemberRole } from '../../members/member.entity.js';
import { OFFICERS } from '../../members/members.access.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, editRecord, findRecord, notThere } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { pageOf, readCursor } from '../../platform/http/pages.js';
import { show } from '../../platform/http/views.js';
import { requireVersion } from '../../platform/http/versions.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import { subjectWords } from '../subjects.js';
import { publishedVersions, readRequirements, type Whole } from './read-requirements.js';
import {
  type NewRequirementDto,
  type RequirementChangesDto,
  type RequirementPage,
  type RequirementQuery,
  RequirementView,
  type SyllabusDto,
  type VersionList,
} from './requirement.dto.js';
import { CheckoutRequirement } from './requirement.entity.js';
import './requirements.problems.js';
import { publish, removeDraft, writeDraft } from './write-version.js';

export const REQUIREMENTS = { entity: CheckoutRequirement, noun: 'checkout requirement' };

/** What the club asks before a checkout is signed. */
@Injectable()
export class RequirementsService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** Oldest first. Drafts are shown to officers. */
  list(user: SignedIn, query: RequirementQuery): Promise<RequirementPage> {
    const { clubId } = user;
    const after = readCursor(query.cursor);
    const work = async (em: EntityManager): Promise<RequirementPage> => {
      const { retired = false, limit } = query;
      const rows = await readRequirements(em, { clubId, retired, after, limit: limit + 1 });
      const page = pageOf(rows, limit);
      return { ...page, items: page.items.map((row) => viewFor(user, row)) };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** @throws 404 */
  read(user: SignedIn, id: string): Promise<RequirementView> {
    return this.db.run(user.clubId, (em) => readView(em, user, id), { readOnly: true });
  }

  /** Every version there was and is. @throws 404 */
  versions({ clubId }: SignedIn, id: string): Promise<VersionList> {
    const work = async (em: EntityManager): Promise<VersionList> => {
      await findRecord(em, REQUIREMENTS, { clubId, id });
      return { items: await publishedVersions(em, { clubId, requirementId: id }) };
    };
    return this.db.run(clubId, work, { readOnly: true });
  }

  /** Begins one, as a draft. @throws 409 where the club has one for the same, 422 */
  add(user: SignedIn, body: NewRequirementDto): Promise<RequirementView> {
    return this.write(user, async (em) => {
      const { clubId } = user;
      const { kind, modelId = null, equipmentGroup = null, condition = null, alsoCalled = [] } = body;
      assertSubject({ kind, modelId, equipmentGroup, condition });
      if (kind !== 'equipment' && alsoCalled.length > 0)
        throw valueRefused('alsoCalled', 'Only an equipment group is called something else besides.');
      await requireReference(em, MODELS, { clubId, id: modelId }, 'modelId');
      const values = { clubId, kind, modelId, equipmentGroup, condition, alsoCalled };
      const { id } = await addRecord(em, REQUIREMENTS, values);
      await writeInstructors(em, { clubId, requirementId: id }, body.instructorIds ?? []);
      await writeDraft(em, { clubId, id, kind, modelId }, body);
      return id;
    });
  }

  /** Who may sign it, what else the group is called, whether it is still asked for. @throws 404, 409, 412, 422 */
  edit(
    user: SignedIn,
    id: string,
    version: number,
    changes: RequirementChangesDto,
  ): Promise<RequirementView> {
    return this.write(user, async (em) => {
      const { clubId } = user;
      const { instructorIds, ...rest } = changes;
      const change = async (row: CheckoutRequirement): Promise<Partial<CheckoutRequirement>> => {
        if (rest.alsoCalled?.length && row.kind !== 'equipment')
          throw valueRefused('alsoCalled', 'Only an equipment group is called something else besides.');
        if (rest.retired === true && !row.retired) await assertNotNeeded(em, clubId, id);
        // Counted as an edit of the requirement, also where only who may sign changed.
        return { ...rest, retired: rest.retired ?? row.retired };
      };
      await editRecord(em, REQUIREMENTS, { where: { clubId, id }, version, change });
      if (instructorIds) await writeInstructors(em, { clubId, requirementId: id }, instructorIds);
      return id;
    });
  }

  /** Puts the draft in place of the one there is, if any. @throws 404, 412, 422 */
  writeDraft(user: SignedIn, id: string, version: number, body: SyllabusDto): Promise<RequirementView> {
    return this.step(user, id, version, async (em, row) => {
      if (row.retired) throw new ProblemException('requirement-retired');
      await writeDraft(em, row, body);
    });
  }

  /** Drops the draft; a requirement that was never published goes with it. @throws 404, 409, 412 */
  async removeDraft({ clubId, memberId }: SignedIn, id: string, version: number): Promise<void> {
    const work = async (em: EntityManager): Promise<void> => {
      const row = await findRecord(em, REQUIREMENTS, { clubId, id }, { lock: true });
      requireVersion(row.rowVersion, version);
      await removeDraft(em, row);
    };
    await this.db.run(clubId, work, { actorId: memberId });
  }

  /** Puts the draft in force. What was signed under the version before counts for items that say the same. @throws 404, 409, 412 */
  publish(user: SignedIn, id: string, version: number): Promise<RequirementView> {
    return this.step(user, id, version, async (em, row) => {
      if (row.retired) throw new ProblemException('requirement-retired');
      await publish(em, row, { by: user.memberId, at: this.clock.now() });
    });
  }

  private step(
    user: SignedIn,
    id: string,
    version: number,
    work: (em: EntityManager, row: CheckoutRequirement) => Promise<void>,
  ): Promise<RequirementView> {
    const { clubId } = user;
    return this.write(user, async (em) => {
      const row = await findRecord(em, REQUIREMENTS, { clubId, id }, { lock: true });
      requireVersion(row.rowVersion, version);
      await work(em, row);
      await em.update(CheckoutRequirement, { clubId, id }, { retired: row.retired });
      return id;
    });
  }

  private write(user: SignedIn, work: (em: EntityManager) => Promise<string>): Promise<RequirementView> {
    return this.db.run(user.clubId, async (em) => readView(em, user, await work(em)), {
      actorId: user.memberId,
    });
  }
}

async function readView(em: EntityManager, user: SignedIn, id: string): Promise<RequirementView> {
  const [row] = await readRequirements(em, { clubId: user.clubId, ids: [id], retired: true });
  if (!row) throw notThere(REQUIREMENTS.noun);
  return viewFor(user, row);
}

const viewFor = (user: SignedIn, row: Whole): RequirementView =>
  show(RequirementView, row, {
    subject: subjectWords(row),
    draft: hasAnyRole(user, ...OFFICERS) ? row.draft : null,
  });

function assertSubject(
  of: Pick<NewRequirementDto, 'kind' | 'modelId' | 'equipmentGroup' | 'condition'>,
): void {
  const needs = { model: 'modelId', equipment: 'equipmentGroup', condition: 'condition' } as const;
  for (const [kind, field] of Object.entries(needs) as [
    keyof typeof needs,
    (typeof needs)[keyof typeof needs],
  ][]) {
    const given = of[field] !== null && of[field] !== undefined;
    if (given === (of.kind === kind)) continue;
    throw valueRefused(field, given ? `Only the kind “${kind}” has it.` : `The kind “${kind}” names it.`);
  }
}

/** Nothing that is in force may wait for a checkout that nobody can sign any more. */
async function assertNotNeeded(em: EntityManager, clubId: string, id: string): Promise<void> {
  const others = await readRequirements(em, { clubId });
  const waiting = others.find(({ inForce, draft }) =>
    [inForce, draft].some((one) => one?.prerequisites.some(({ requirementId }) => requirementId === id)),
  );
  if (waiting)
    throw new ProblemException('requirement-needed', {
      detail: `“${(waiting.inForce ?? waiting.draft)!.title}” asks for it first. Publish a version of that without it, then retire this one.`,
    });
}

async function writeInstructors(
  em: EntityManager,
  of: { clubId: string; requirementId: string },
  ids: string[],
): Promise<void> {
  const { clubId, requirementId } = of;
  const known = await em.findBy(MemberRole, { clubId, memberId: In(ids), role: 'instructor' });
  ids.forEach((id, index) => {
    if (!known.some(({ memberId }) => memberId === id))
      throw valueRefused(`instructorIds[${index}]`, 'The club has no such instructor.');
  });
  await em.query('DELETE FROM checkout_instructors WHERE club_id = $1 AND requirement_id = $2', [
    clubId,
    requirementId,
  ]);
  await em.query(
    'INSERT INTO checkout_instructors (club_id, requirement_id, member_id) SELECT $1, $2, unnest($3::uuid[])',
    [clubId, requirementId, ids],
  );
}
