import type { EntityManager } from 'typeorm';
import { pointerTo, ProblemException } from '../platform/problems/problem-exception.js';
import { defineProblems } from '../platform/problems/problem-catalogue.js';
import type { LogEntry } from './log-entry.entity.js';

defineProblems({
  code: 'aircraft-of-entry',
  status: 422,
  title: 'Aircraft of the entry not clear',
  detail: "Name one of the club's aircraft or models, or describe the aircraft in full.",
});

/** What a log entry keeps about the aircraft. */
export type AircraftFlown = Pick<
  LogEntry,
  'aircraftId' | 'modelId' | 'aircraftWords' | 'category' | 'class' | 'typeRating' | 'tailwheel'
>;

const NEEDED = ['aircraftWords', 'category', 'class', 'tailwheel'] as const;
const FIXED = ['modelId', 'category', 'class', 'typeRating', 'tailwheel'] as const;

/**
 * The aircraft of an entry: what the club knows of the aircraft or model named, or else what the entry says itself.
 * @throws 422 `aircraft-of-entry` when the id is unknown, when the entry contradicts the aircraft, or when it says too little
 */
export async function aircraftFlown(
  em: EntityManager,
  clubId: string,
  given: Partial<AircraftFlown>,
): Promise<AircraftFlown> {
  const known = given.aircraftId
    ? await ofAircraft(em, clubId, given.aircraftId)
    : given.modelId
      ? await ofModel(em, clubId, given.modelId)
      : null;
  if (known === null) {
    refuse(
      NEEDED.filter((field) => given[field] === undefined),
      'is needed when no aircraft or model of the club is named.',
    );
    return {
      ...(given as AircraftFlown),
      aircraftId: null,
      modelId: null,
      typeRating: given.typeRating ?? null,
    };
  }
  const differs = FIXED.filter(
    (field) => given[field] !== undefined && given[field] !== null && given[field] !== known[field],
  );
  refuse(differs, 'is not that of the aircraft or model named. Leave it out.');
  return { ...known, aircraftWords: given.aircraftWords ?? known.aircraftWords };
}

async function ofAircraft(em: EntityManager, clubId: string, id: string): Promise<AircraftFlown> {
  const rows = await em.query<AircraftFlown[]>(
    `SELECT a.id AS "aircraftId", m.id AS "modelId", m.make_model || ', ' || a.registration AS "aircraftWords",
            m.category, m.class, m.type_rating AS "typeRating", m.tailwheel
       FROM aircraft a JOIN aircraft_models m ON m.club_id = a.club_id AND m.id = a.model_id
      WHERE a.club_id = $1 AND a.id = $2`,
    [clubId, id],
  );
  if (rows[0] === undefined) refuse(['aircraftId'], 'is no aircraft of the club.');
  return rows[0]!;
}

async function ofModel(em: EntityManager, clubId: string, id: string): Promise<AircraftFlown> {
  const rows = await em.query<AircraftFlown[]>(
    `SELECT NULL AS "aircraftId", m.id AS "modelId", m.make_model AS "aircraftWords",
            m.category, m.class, m.type_rating AS "typeRating", m.tailwheel
       FROM aircraft_models m WHERE m.club_id = $1 AND m.id = $2`,
    [clubId, id],
  );
  if (rows[0] === undefined) refuse(['modelId'], 'is no model of the club.');
  return rows[0]!;
}

function refuse(fields: readonly string[], because: string): void {
  if (fields.length === 0) return;
  throw new ProblemException('aircraft-of-entry', {
    detail: `${fields.join(', ')} ${because}`,
    errors: fields.map((field) => ({
      field,
      pointer: pointerTo(field),
      in: 'body',
      message: `${field} ${because}`,
    })),
  });
}
