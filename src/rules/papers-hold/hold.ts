/** Until when a paper holds for what: the answer's shape, and what the countries share. */
import { addDays, type LocalDate } from '../calendar/dates.js';
import type { Moment } from '../engine/moment.js';
import type { Parameters } from '../engine/parameters.js';
import type {
  CertificateFact,
  EndorsementFact,
  InstructorFact,
  MedicalFact,
  PersonFacts,
  RatingFact,
} from '../facts/person.js';

/** One thing a paper is good for. */
export interface Hold {
  /** 'commercial privileges', 'acting as pilot in command'. */
  purpose: string;
  /** Last day it holds; null: it names no end, or `note` says why no day can be told. */
  through: LocalDate | null;
  /** Why it holds no longer than that, or why nothing can be told; null where the day says all. */
  note: string | null;
}

/** All that a paper is good for, in the order of what asks for most. */
export interface PaperHold {
  paperId: string;
  holds: Hold[];
}

/** What the lists of a country are made from: everybody's papers as entered, verified or not. */
export interface Papers {
  person: PersonFacts;
  moment: Moment;
  p: Parameters;
}

export const hold = (purpose: string, through: LocalDate | null, note: string | null = null): Hold => ({
  purpose,
  through,
  note,
});

/** The records of a fact; none where it is not known. */
export const listOf = <T>(fact: { known: boolean; value?: T[] } | undefined): T[] =>
  fact?.known === true ? fact.value! : [];

export const certificatesHold = (all: readonly CertificateFact[]): PaperHold[] =>
  all.map(({ id, level, validThrough }) => ({
    paperId: id,
    holds: [
      hold(`${level} pilot privileges`, validThrough, validThrough === null ? 'It names no end.' : null),
    ],
  }));

export const ratingsHold = (all: readonly RatingFact[]): PaperHold[] =>
  all.map(({ id, kind, validThrough }) => ({
    paperId: id,
    holds: [
      hold(
        `${kind.replaceAll('-', ' ')} rating`,
        validThrough,
        validThrough === null ? 'It names no end.' : null,
      ),
    ],
  }));

/** @param limited last day by the law, where the kind has one; an end that is printed can only shorten it */
export const endorsementsHold = (
  all: readonly EndorsementFact[],
  limited: (one: EndorsementFact) => LocalDate | null,
): PaperHold[] =>
  all.map((one) => {
    const ends = [one.expiresOn, limited(one)].flatMap((end) => end ?? []).sort();
    const purpose = `${one.kind.replaceAll('-', ' ')}${one.makeModel === null ? '' : ` in the ${one.makeModel}`}`;
    return {
      paperId: one.id,
      holds: [hold(purpose, ends[0] ?? null, ends.length === 0 ? 'It names no end.' : null)],
    };
  });

/**
 * Medical certificates, each privilege with its day as `lasting` gives it. A withdrawal ends every examination before it,
 * not only the certificate it names (strict reading, as in the rules).
 *
 * @param of.sameDayToo it ends one of its own day as well
 */
export function medicalsHold(
  { medicals, birthDate }: Pick<PersonFacts, 'medicals' | 'birthDate'>,
  of: { sameDayToo: boolean },
  lasting: (medical: MedicalFact, born: LocalDate) => Hold[],
): PaperHold[] {
  const all = listOf(medicals);
  return all.map((medical): PaperHold => {
    if (!birthDate.known)
      return {
        paperId: medical.id,
        holds: [hold('all privileges', null, 'It hangs on the birth date, which is not on record.')],
      };
    const ended = endedOn(medical, all, of.sameDayToo);
    const holds = lasting(medical, birthDate.value).map((one) =>
      ended !== null && ended <= one.through!
        ? hold(one.purpose, addDays(ended, -1), `A certificate was withdrawn on ${ended}.`)
        : one,
    );
    return { paperId: medical.id, holds };
  });
}

function endedOn(medical: MedicalFact, all: readonly MedicalFact[], sameDayToo: boolean): LocalDate | null {
  const others = all.flatMap(({ withdrawnOn }) => withdrawnOn ?? []);
  const ending = others.filter((on) => on > medical.examOn || (sameDayToo && on === medical.examOn));
  return [...ending, ...(medical.withdrawnOn === null ? [] : [medical.withdrawnOn])].sort()[0] ?? null;
}

/** Instructor certificates where the law counts by the end that is printed on them. */
export const printedInstructorsHold = (all: readonly InstructorFact[]): PaperHold[] =>
  all.map(({ id, printedEndOn }) => ({
    paperId: id,
    holds: [
      hold('giving instruction', printedEndOn, printedEndOn === null ? 'Until when is not on record.' : null),
    ],
  }));
