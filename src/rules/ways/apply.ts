/** The facts as they would be after an act. */
import { toInstant } from '../calendar/instants.js';
import { applyRemedy } from '../engine/remedy.js';
import { known, type Fact } from '../facts/fact.js';
import type { ReservationFact } from '../facts/aircraft.js';
import type { PersonFacts } from '../facts/person.js';
import type { FactSheet } from '../facts/sheet.js';
import type { Change, Done, Sortie } from './state.js';
import { nameOf, type Changed } from './verdicts.js';

/** The sheet after one act. */
export function applyDone(sheet: FactSheet, done: Done): FactSheet {
  const changed = applyChange(sheet, done.change, done.as);
  return done.books && done.sortie ? book(changed, done.sortie) : changed;
}

/** The facts an act touches, by name. */
export function changedBy(sheet: FactSheet, done: Pick<Done, 'change' | 'as' | 'sortie'>): Changed {
  const { change, as, sortie } = done;
  if (change.is === 'leave') return new Set();
  if (change.is === 'parts') {
    const { papers } = change;
    return papers ? new Set([...PAPERS, 'unverified'].map((subject) => `${papers.id}.${subject}`)) : 'all';
  }
  if (change.effects.some((effect) => effect.op === 'flight')) return 'all';
  const on = as.flight ? { ...sheet, flight: as.flight } : sheet;
  const names = change.effects.flatMap((effect) =>
    effect.op === 'flight' ? [] : [nameOf(on, as.crew, effect.fact)],
  );
  if (sortie) names.push('aircraft.reservations', `${sortie.person}.commitments`);
  return new Set(names);
}

export function applyChange(sheet: FactSheet, change: Change, as: Done['as']): FactSheet {
  if (change.is === 'leave') return sheet;
  if (change.is === 'parts') {
    const people = { ...sheet.people };
    for (const person of change.people ?? []) people[person.id] = person;
    if (change.papers) people[change.papers.id] = withPapers(sheet, change.papers);
    return {
      ...sheet,
      aircraft: change.aircraft ?? sheet.aircraft,
      people,
      flight: change.flight ? { ...sheet.flight, ...change.flight } : sheet.flight,
    };
  }
  const remedy = { act: '', title: '', by: 'member' as const, effects: [...change.effects] };
  if (!as.flight) return applyRemedy(sheet, as.crew, remedy);
  return { ...applyRemedy({ ...sheet, flight: as.flight }, as.crew, remedy), flight: sheet.flight };
}

export const PAPERS = [
  'certificates',
  'instructor',
  'medicals',
  'basicMed',
  'reviews',
  'endorsements',
  'ratings',
] as const;

/** Adds the papers that are not counted yet to what is; nothing of what was done meanwhile is lost. */
function withPapers(sheet: FactSheet, verified: PersonFacts): PersonFacts {
  const now = sheet.people[verified.id];
  if (!now) return verified;
  const added = Object.fromEntries(
    PAPERS.flatMap((subject) => {
      const [has, gets] = [now[subject], verified[subject]] as (Fact<{ id: string }[]> | undefined)[];
      if (!gets) return [];
      if (!has?.known || !gets.known) return [[subject, gets]];
      const ids = new Set(has.value.map(({ id }) => id));
      const value = [...has.value, ...gets.value.filter(({ id }) => !ids.has(id))];
      return [[subject, known(value, sheet.knownAt, 'planned')]];
    }),
  );
  return { ...now, ...added, unverified: known([], sheet.knownAt, 'planned') };
}

/** Keeps aircraft and person for the practice flight; the hours it will put on the meter come along. */
function book(sheet: FactSheet, { dual, tenths, flights, from, to, person }: Sortie): FactSheet {
  const id = `planned:practice-${from}`;
  const [begins, ends] = [toInstant(from), toInstant(to)];
  const { aircraft } = sheet;
  const who = sheet.people[person];
  const reservation: ReservationFact = {
    id,
    kind: 'flight',
    from: begins,
    to: ends,
    holder: who?.name ?? '',
    expectedTenths: tenths * flights,
    purpose: dual ? 'dual' : 'solo',
    forHire: false,
  };
  // A calendar that is not on record stays so.
  const reservations = aircraft.reservations.known
    ? known([...aircraft.reservations.value, reservation], sheet.knownAt, 'planned')
    : aircraft.reservations;
  const commitments = who?.commitments.known
    ? known(
        [
          ...who.commitments.value,
          { id, from: begins, to: ends, role: 'pilot' as const, what: 'a practice flight' },
        ],
        sheet.knownAt,
        'planned',
      )
    : who?.commitments;
  return {
    ...sheet,
    aircraft: { ...aircraft, reservations },
    people: who && commitments ? { ...sheet.people, [person]: { ...who, commitments } } : sheet.people,
  };
}
