/** The parts in which the facts of decisions are stored, and how they are put together again. */
import type { EntityManager } from 'typeorm';
import type { AircraftFacts, FactSheet, PersonFacts } from '../rules/index.js';

/** Where the parts of a sheet lie in fact_parts. */
export interface Parts {
  head: string;
  people: Record<string, string>;
  aircraft: string;
  policy: string;
  /** The law's numbers; absent in decisions stored before they were kept. */
  law?: string;
}

/** Reads a part by its digest; throws where it is missing or no JSON. */
export type ReadPart = <T>(digest: string) => T;

/** The texts of parts by digest, in one statement; those that are not there are absent. */
export async function readPartTexts(
  em: EntityManager,
  digests: ReadonlySet<string>,
): Promise<Map<string, string>> {
  if (digests.size === 0) return new Map();
  const rows: { digest: string; body: string }[] = await em.query(
    'SELECT digest, body FROM fact_parts WHERE club_id = bellcrank_club() AND digest = ANY ($1::text[])',
    [[...digests]],
  );
  return new Map(rows.map(({ digest, body }) => [digest, body]));
}

/** The sheet of a decision. */
export function sheetOf(parts: Parts, part: ReadPart): FactSheet {
  return {
    ...part<Omit<FactSheet, 'people' | 'aircraft'>>(parts.head),
    people: Object.fromEntries(
      Object.entries(parts.people).map(([personId, digest]) => [personId, part<PersonFacts>(digest)]),
    ),
    aircraft: part<AircraftFacts>(parts.aircraft),
  };
}
