/** Reads the club's requirements whole: who may sign, what is in force, what is drafted. */
import type { EntityManager } from 'typeorm';
import type { Task } from '../../practice/tolerances/index.js';
import type { Instant } from '../../rules/index.js';
import type { CheckoutCondition, EquipmentGroup } from '../../rules/facts/person.js';
import type { RequirementKind } from '../subjects.js';

/** An item of a version. */
export interface Item {
  id: string;
  position: number;
  title: string;
  standard: string;
  manoeuvre: Task | null;
  required: boolean;
}

/** A version with all it asks for. */
export interface Version {
  id: string;
  number: number;
  title: string;
  goodDays: number | null;
  quiz: { questions: number; passPercent: number } | null;
  prerequisites: { requirementId: string; title: string }[];
  alsoModels: { id: string; makeModel: string }[];
  items: Item[];
  publishedAt: Instant | null;
  publishedBy: { id: string; name: string } | null;
}

/** What it is for, and who may sign. */
export interface Head {
  id: string;
  rowVersion: number;
  recordedAt: Instant;
  kind: RequirementKind;
  modelId: string | null;
  makeModel: string | null;
  equipmentGroup: EquipmentGroup | null;
  condition: CheckoutCondition | null;
  alsoCalled: string[];
  retired: boolean;
  instructors: { id: string; name: string }[];
}

/** A requirement with what is in force and what is drafted. */
export interface Whole extends Head {
  inForce: Version | null;
  draft: Version | null;
}

/** A requirement something can be signed under. */
export interface InForce extends Head {
  version: Version;
}

const instant = (value: string): string =>
  `to_char(${value} AT TIME ZONE 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS"Z"')`;

/** The title a requirement goes by: of what is in force, else of its draft. */
const titleOf = (requirement: string): string => `(SELECT t.title FROM checkout_versions t
  WHERE t.club_id = v.club_id AND t.requirement_id = ${requirement} ORDER BY (t.published_at IS NULL), t.number DESC LIMIT 1)`;

const VERSION = `jsonb_build_object('id', v.id, 'number', v.number, 'title', v.title, 'goodDays', v.good_days,
  'quiz', CASE WHEN v.quiz_questions IS NOT NULL THEN jsonb_build_object('questions', v.quiz_questions, 'passPercent', v.quiz_pass_percent) END,
  'publishedAt', ${instant('v.published_at')},
  'publishedBy', (SELECT jsonb_build_object('id', m.id, 'name', m.name) FROM members m WHERE m.club_id = v.club_id AND m.id = v.published_by),
  'prerequisites', (SELECT coalesce(jsonb_agg(jsonb_build_object('requirementId', p.requirement_id, 'title', ${titleOf('p.requirement_id')})
    ORDER BY p.requirement_id), '[]'::jsonb) FROM checkout_prerequisites p WHERE p.club_id = v.club_id AND p.version_id = v.id),
  'alsoModels', (SELECT coalesce(jsonb_agg(jsonb_build_object('id', a.id, 'makeModel', a.make_model) ORDER BY a.make_model, a.id), '[]'::jsonb)
    FROM checkout_transfers x JOIN aircraft_models a ON a.club_id = x.club_id AND a.id = x.model_id
   WHERE x.club_id = v.club_id AND x.version_id = v.id),
  'items', (SELECT coalesce(jsonb_agg(jsonb_build_object('id', i.id, 'position', i.position, 'title', i.title, 'standard', i.standard,
    'manoeuvre', i.manoeuvre, 'required', i.required) ORDER BY i.position), '[]'::jsonb)
    FROM checkout_items i WHERE i.club_id = v.club_id AND i.version_id = v.id))`;

const newest = (where: string): string => `(SELECT ${VERSION} FROM checkout_versions v
   WHERE v.club_id = r.club_id AND v.requirement_id = r.id AND ${where} ORDER BY v.number DESC LIMIT 1)`;

/** Requirements, oldest first, in one statement. @param of.ids only these */
export function readRequirements(
  em: EntityManager,
  of: { clubId: string; ids?: readonly string[]; retired?: boolean; after?: string | null; limit?: number },
): Promise<Whole[]> {
  return em.query(
    `SELECT r.id, r.row_version AS "rowVersion", ${instant('r.recorded_at')} AS "recordedAt", r.kind, r.model_id AS "modelId",
            a.make_model AS "makeModel", r.equipment_group AS "equipmentGroup", r.condition, r.also_called AS "alsoCalled", r.retired,
            (SELECT coalesce(jsonb_agg(jsonb_build_object('id', m.id, 'name', m.name) ORDER BY m.name, m.id), '[]'::jsonb)
               FROM checkout_instructors i JOIN members m ON m.club_id = i.club_id AND m.id = i.member_id
              WHERE i.club_id = r.club_id AND i.requirement_id = r.id) AS instructors,
            ${newest('v.published_at IS NOT NULL')} AS "inForce", ${newest('v.published_at IS NULL')} AS draft
       FROM checkout_requirements r LEFT JOIN aircraft_models a ON a.club_id = r.club_id AND a.id = r.model_id
      WHERE r.club_id = $1 AND ($2::uuid[] IS NULL OR r.id = ANY ($2)) AND ($3 OR NOT r.retired)
        AND ($4::uuid IS NULL OR r.id > $4)
      ORDER BY r.id LIMIT $5`,
    [of.clubId, of.ids ?? null, of.retired ?? false, of.after ?? null, of.limit ?? null],
  );
}

/** Those that something can be signed under: not retired, with a published version. */
export async function requirementsInForce(em: EntityManager, clubId: string): Promise<InForce[]> {
  const all = await readRequirements(em, { clubId });
  return all.flatMap(({ inForce, draft: _draft, ...head }) =>
    inForce ? [{ ...head, version: inForce }] : [],
  );
}

/** Published versions, newest first. */
export async function publishedVersions(
  em: EntityManager,
  of: { clubId: string; requirementId: string },
): Promise<Version[]> {
  const rows = await em.query<{ version: Version }[]>(
    `SELECT ${VERSION} AS version FROM checkout_versions v
      WHERE v.club_id = $1 AND v.requirement_id = $2 AND v.published_at IS NOT NULL ORDER BY v.number DESC`,
    [of.clubId, of.requirementId],
  );
  return rows.map(({ version }) => version);
}

/** May this instructor sign it? */
export const maySign = ({ instructors }: Pick<Head, 'instructors'>, memberId: string): boolean =>
  instructors.length === 0 || instructors.some(({ id }) => id === memberId);
