/** Writes, drops and publishes the draft of a requirement. The requirement's row is locked by then. */
import { type EntityManager, IsNull, Not } from 'typeorm';
import { newId } from '../../platform/ids.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import { readRequirements } from './read-requirements.js';
import type { SyllabusDto } from './requirement.dto.js';
import { CheckoutRequirement, CheckoutVersion, SyllabusItem } from './requirement.entity.js';

type Head = Pick<CheckoutRequirement, 'clubId' | 'id' | 'kind' | 'modelId'>;

/** @throws 422 */
export async function writeDraft(em: EntityManager, of: Head, body: SyllabusDto): Promise<void> {
  const { clubId, id: requirementId } = of;
  const { prerequisiteIds = [], alsoModelIds = [], items, quiz = null } = body;
  await assertPrerequisites(em, of, prerequisiteIds);
  await assertModels(em, of, alsoModelIds);
  const titles = items.map(({ title }) => title);
  const twice = titles.findIndex((title, index) => titles.indexOf(title) !== index);
  if (twice >= 0) throw valueRefused(`items[${twice}].title`, 'Two items have this title. Tell them apart.');
  await em.delete(CheckoutVersion, { clubId, requirementId, publishedAt: IsNull() });
  const last = await em.maximum(CheckoutVersion, 'number', { clubId, requirementId });
  const versionId = newId();
  await em.insert(CheckoutVersion, {
    ...{ clubId, id: versionId, requirementId, number: (last ?? 0) + 1, title: body.title },
    ...{ goodDays: body.goodDays ?? null, quizQuestions: quiz?.questions ?? null },
    quizPassPercent: quiz?.passPercent ?? null,
  });
  const rows = items.map(({ title, standard, manoeuvre = null, required = true }, index) => ({
    ...{ clubId, id: newId(), versionId, position: index + 1, title, standard, manoeuvre, required },
  }));
  if (rows.length > 0) await em.insert(SyllabusItem, rows);
  await em.query(
    'INSERT INTO checkout_prerequisites (club_id, version_id, requirement_id) SELECT $1, $2, unnest($3::uuid[])',
    [clubId, versionId, prerequisiteIds],
  );
  await em.query(
    'INSERT INTO checkout_transfers (club_id, version_id, model_id) SELECT $1, $2, unnest($3::uuid[])',
    [clubId, versionId, alsoModelIds],
  );
}

/** A requirement that was never published goes with its draft. @throws 409 */
export async function removeDraft(em: EntityManager, { clubId, id }: Head): Promise<void> {
  await requireDraft(em, { clubId, id });
  await em.delete(CheckoutVersion, { clubId, requirementId: id, publishedAt: IsNull() });
  const published = await em.existsBy(CheckoutVersion, {
    clubId,
    requirementId: id,
    publishedAt: Not(IsNull()),
  });
  if (!published) await em.delete(CheckoutRequirement, { clubId, id });
}

/** @throws 409 without a draft, or where the bank has too few questions */
export async function publish(
  em: EntityManager,
  of: Head,
  { by, at }: { by: string; at: string },
): Promise<void> {
  const { clubId, id } = of;
  const draft = await requireDraft(em, of);
  const [whole] = await readRequirements(em, { clubId, ids: [id], retired: true });
  await assertPrerequisites(
    em,
    of,
    whole!.draft!.prerequisites.map(({ requirementId }) => requirementId),
  );
  const { quizQuestions } = draft;
  if (quizQuestions !== null) {
    const [bank] = await em.query<{ n: number }[]>(
      `SELECT count(*)::int AS n FROM quiz_questions WHERE club_id = $1 AND requirement_id = $2 AND state = 'published'`,
      [clubId, id],
    );
    if (bank!.n < quizQuestions)
      throw new ProblemException('quiz-bank-short', {
        detail: `The quiz draws ${quizQuestions} questions and ${bank!.n} are published. Publish more, or ask fewer.`,
      });
  }
  await em.update(CheckoutVersion, { clubId, id: draft.id }, { publishedAt: at, publishedBy: by });
}

async function requireDraft(
  em: EntityManager,
  { clubId, id }: Pick<Head, 'clubId' | 'id'>,
): Promise<CheckoutVersion> {
  const draft = await em.findOneBy(CheckoutVersion, { clubId, requirementId: id, publishedAt: IsNull() });
  if (!draft) throw new ProblemException('requirement-no-draft');
  return draft;
}

/** The club has them and asks for them. That they lead in no circle, the database says. */
async function assertPrerequisites(em: EntityManager, of: Head, ids: readonly string[]): Promise<void> {
  const known = await readRequirements(em, { clubId: of.clubId, ids });
  ids.forEach((id, index) => {
    const field = `prerequisiteIds[${index}]`;
    if (id === of.id) throw valueRefused(field, 'A checkout is not its own prerequisite.');
    if (!known.some((one) => one.id === id))
      throw valueRefused(field, 'The club asks for no such checkout. Choose one that is not retired.');
  });
}

async function assertModels(em: EntityManager, of: Head, ids: readonly string[]): Promise<void> {
  if (ids.length > 0 && of.kind !== 'model')
    throw valueRefused('alsoModelIds', 'Only the checkout of a model counts for like models.');
  const known = await em.query<{ id: string }[]>(
    'SELECT id FROM aircraft_models WHERE club_id = $1 AND id = ANY ($2::uuid[])',
    [of.clubId, ids],
  );
  ids.forEach((id, index) => {
    const field = `alsoModelIds[${index}]`;
    if (id === of.modelId) throw valueRefused(field, 'It counts for its own model as it is. Name others.');
    if (!known.some((one) => one.id === id)) throw valueRefused(field, 'The club has no such model.');
  });
}
