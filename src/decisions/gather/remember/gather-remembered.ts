/**
 * Gathers the facts of a question, reading anew only what has changed since somebody asked before. One small statement tells what
 * the transaction sees changed (fact_marks); the rest is gathered as always, and remembered where it may be.
 */
import { performance } from 'node:perf_hooks';
import type { DataSource, EntityManager } from 'typeorm';
import { committedClubOf } from '../../../platform/database/tenant.js';
import type { PersonFacts } from '../../../rules/index.js';
import { gatherAircraft, type GatheredAircraft } from '../aircraft.js';
import { gatherClub, type ClubFacts } from '../club.js';
import { gatherPersons, type GatheredPerson } from '../people.js';
import { whatCounts } from '../what-counts.js';
import { readMarks } from './marks.sql.js';
import { Memory } from './memory.js';
import type { Remembered } from './touched.js';

/** Facts of a question: people by id, aircraft in order of registration. Who is not found is absent. */
export interface GatheredFacts {
  club: ClubFacts;
  people: Record<string, PersonFacts>;
  aircraft: GatheredAircraft[];
}

interface Question {
  memberIds: string[];
  /** null: the whole fleet. */
  aircraftIds: string[] | null;
  knownAt: string;
  /** A booking that does not stand in its own way: such facts are never remembered. */
  exceptBookingId: string | null;
}

/** Each database has a memory of its own. */
const memories = new WeakMap<DataSource, Memory>();

export function gatherRemembered(em: EntityManager, question: Question): Promise<GatheredFacts> {
  const clubId = committedClubOf(em);
  return clubId === null || question.exceptBookingId !== null
    ? gatherAnew(em, question)
    : new Recalling(em, memoryOf(em), { ...question, clubId }).gather();
}

/** The same from the tables alone, in three statements. */
export async function gatherAnew(em: EntityManager, question: Question): Promise<GatheredFacts> {
  const { memberIds, aircraftIds, knownAt, exceptBookingId } = question;
  const club = await gatherClub(em, knownAt);
  const people = await gatherPersons(em, { memberIds, exceptBookingId, ...whatCounts(club, knownAt) });
  const aircraft = await gatherAircraft(em, aircraftIds, knownAt, exceptBookingId);
  return { club, people: byId(people), aircraft };
}

function memoryOf({ connection }: EntityManager): Memory {
  const known = memories.get(connection) ?? new Memory();
  memories.set(connection, known);
  return known;
}

const byId = (people: readonly Pick<GatheredPerson, 'facts'>[]): Record<string, PersonFacts> =>
  Object.fromEntries(people.map(({ facts }) => [facts.id, facts]));

/** A person as remembered: how far back, and with which papers counted. */
interface KnownPerson {
  facts: PersonFacts;
  counted: string;
}
interface Fleet {
  /** In order of registration. */
  ids: string[];
}

const CLUB: Remembered = { kind: 'club' };
const FLEET: Remembered = { kind: 'fleet' };
const person = (id: string): Remembered => ({ kind: 'person', id });
const plane = (id: string): Remembered => ({ kind: 'aircraft', id });

/** One question that is asked of memory first. */
class Recalling {
  private readonly of: { clubId: string; knownAt: string; nowMs: number };

  constructor(
    private readonly em: EntityManager,
    private readonly memory: Memory,
    private readonly question: Question & { clubId: string },
  ) {
    const { clubId, knownAt } = question;
    this.of = { clubId, knownAt, nowMs: performance.now() };
  }

  async gather(): Promise<GatheredFacts> {
    const stands = await this.recall();
    const club = stands.club ?? (await this.gatherClub());
    const people = await this.gatherPeople(club, stands.people);
    const aircraft = stands.fleet
      ? await this.gatherMissing(stands.fleet, stands.aircraft)
      : await this.gatherFleet();
    return { club, people, aircraft };
  }

  /** What still stands. What the marks leave is taken at once, before another question changes the memory. */
  private async recall() {
    const { memory, of } = this;
    const { clubId, memberIds, aircraftIds } = this.question;
    const planes = aircraftIds ?? memory.guess<Fleet>(clubId, FLEET)?.ids ?? [];
    const whats = [CLUB, FLEET, ...memberIds.map(person), ...planes.map(plane)];
    const marks = await readMarks(this.em, memory.snapshotsOf(clubId, whats));
    const recall = <T extends object>(what: Remembered): T | null => memory.recall<T>({ ...of, what }, marks);
    const all = recall<Fleet>(FLEET)?.ids ?? null;
    // One needs no order; several stand in the order of the fleet.
    const fleet = aircraftIds?.length === 1 ? aircraftIds : inOrder(all, aircraftIds);
    const found = (fleet ?? []).map((id) => recall<GatheredAircraft>(plane(id)));
    return {
      club: recall<ClubFacts>(CLUB),
      people: memberIds.map((id) => recall<KnownPerson>(person(id))).filter((one) => one !== null),
      fleet,
      aircraft: found.filter((one) => one !== null),
    };
  }

  private async gatherClub(): Promise<ClubFacts> {
    const club = await gatherClub(this.em, this.of.knownAt);
    this.memory.keep({ ...this.of, what: CLUB }, club, club);
    return club;
  }

  private async gatherPeople(
    club: ClubFacts,
    known: readonly KnownPerson[],
  ): Promise<Record<string, PersonFacts>> {
    const { memory, of, question } = this;
    const counts = whatCounts(club, of.knownAt);
    const counted = `${counts.logSince} ${counts.unverifiedCounts}`;
    for (const one of known) if (one.counted !== counted) memory.forget(of.clubId, person(one.facts.id));
    const people = known.filter((one) => one.counted === counted);
    const memberIds = question.memberIds.filter((id) => !people.some(({ facts }) => facts.id === id));
    const missing =
      memberIds.length === 0
        ? []
        : await gatherPersons(this.em, { memberIds, exceptBookingId: null, ...counts });
    for (const one of missing)
      memory.keep({ ...of, what: person(one.facts.id) }, { facts: one.facts, counted }, one);
    return byId([...people, ...missing]);
  }

  private async gatherMissing(
    fleet: readonly string[],
    known: readonly GatheredAircraft[],
  ): Promise<GatheredAircraft[]> {
    const missing = fleet.filter((id) => !known.some(({ facts }) => facts.id === id));
    const all = [...known, ...(missing.length === 0 ? [] : await this.readAircraft(missing))];
    return fleet.flatMap((id) => all.filter(({ facts }) => facts.id === id));
  }

  private async gatherFleet(): Promise<GatheredAircraft[]> {
    const { aircraftIds } = this.question;
    const all = await this.readAircraft(aircraftIds);
    const [first] = all;
    // The fleet's order stands as long as each of its aircraft does, and on its own day.
    if (aircraftIds === null && first)
      this.memory.keep(
        { ...this.of, what: FLEET },
        { ids: all.map(({ facts }) => facts.id) } satisfies Fleet,
        first,
      );
    return all;
  }

  private async readAircraft(ids: string[] | null): Promise<GatheredAircraft[]> {
    const rows = await gatherAircraft(this.em, ids, this.of.knownAt, null);
    for (const one of rows) this.memory.keep({ ...this.of, what: plane(one.facts.id) }, one, one);
    return rows;
  }
}

const inOrder = (fleet: readonly string[] | null, wanted: readonly string[] | null): string[] | null =>
  fleet && fleet.filter((id) => wanted === null || wanted.includes(id));
