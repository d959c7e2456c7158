import type { LocalDate } from '../calendar/dates.js';
import type { ParameterBook, ParameterRead } from '../engine/parameters.js';
import { explainParameter, valueSays } from './parameter-words.js';

/** A number as a judgement read it. */
export interface NumberRead extends ParameterRead {
  title: string;
  /** With its unit: '90 days'. */
  says: string;
  ofClub: boolean;
  /** First date on which another value holds; null: none is known. */
  to: LocalDate | null;
  /** When a person last held it against its source; null for the club's own. */
  checkedOn: LocalDate | null;
}

/** The numbers of a finding with their titles, units and dates. */
export function explainNumbers(reads: readonly ParameterRead[], book: ParameterBook): NumberRead[] {
  return reads.map((read) => {
    const { title, unit, ofClub, checkedOn, history } = explainParameter(
      book,
      read.id,
      read.from ?? '0000-00-00',
    );
    const to = history.find(({ from }) => from === read.from)?.to ?? null;
    return { ...read, title, says: valueSays(read.value, unit), ofClub, to, checkedOn };
  });
}
