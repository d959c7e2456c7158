/**
 * Are the numbers behind the answer still what the law and the club say? A rule set carries one more rule for this,
 * `law.parameters_checked`, made for its parameters. It only advises: it never blocks a flight and never cures one.
 *
 * It is an ordinary rule, so it is judged, dated and explained like the others, and `until` says from which departure
 * a parameter will be overdue. It looks at every parameter the set's rules declare rather than at those read for this
 * flight, so its verdict hangs on nothing but the book and the day.
 */
import { addDays, addPlainMonths, type LocalDate } from '../calendar/dates.js';
import type { Moment } from './moment.js';
import type { ParameterBook } from './parameters.js';
import { defineRule, type Rule } from './rule.js';

/** Days before the end of a parameter within which it is told. */
export const TOLD_AHEAD_DAYS = 30;

/** Titles told in one sentence; the rest is counted, for a phone has eight lines. */
const MOST_NAMED = 2;

/** Parameters to re-check, by the last day on which the last check is recent enough; and those whose values end. */
interface Watched {
  recheckBy: { through: LocalDate; titles: string[] }[];
  endings: { title: string; from: LocalDate }[];
}

/** Makes the rule for the parameters `ids` of a book. Order and repetition of `ids` do not matter. */
export function parametersChecked(book: ParameterBook, ids: Iterable<string>): Rule {
  const watched = watch(book, [...new Set(ids)].sort());
  return defineRule({
    id: 'law.parameters_checked',
    title: 'Numbers behind the rules re-checked',
    weight: 'advice',
    binds: 'club',
    reads: [],
    parameters: [],
    branches: {
      checked: {
        status: 'met',
        says: 'The numbers behind the rules have been re-checked lately enough{next}.',
      },
      overdue: {
        status: 'short',
        says: 'Hold these numbers against their source again: {which}.',
      },
    },
    bodies: [
      {
        version: 1,
        from: null,
        to: null,
        citation: { text: 'Bellcrank: dated parameters', status: 'common practice, no source' },
        judge(_f, moment, _p, take) {
          const which = [...overdue(watched, moment), ...ending(watched, moment)];
          if (which.length > 0) return take('overdue', { which: which.join('; ') });
          const next = watched.recheckBy[0]?.through;
          return take('checked', { next: next ? `; the next are due by ${next}` : '' });
        },
      },
    ],
  }) as unknown as Rule;
}

/** The parameters that the rules of a set declare. */
export function declaredBy(rules: readonly Rule[]): string[] {
  return rules.flatMap((rule) => [...rule.parameters]);
}

function overdue({ recheckBy }: Watched, moment: Moment): string[] {
  return recheckBy
    .filter(({ through }) => !moment.endsOnOrBefore(through))
    .map(({ through, titles }) => `${named(titles)} (to be re-checked by ${through})`);
}

/** Told ahead of the end only: after it the rules that still read the parameter cannot tell, and say so themselves. */
function ending({ endings }: Watched, moment: Moment): string[] {
  return endings
    .filter(
      ({ from }) => moment.startsOnOrAfter(addDays(from, -TOLD_AHEAD_DAYS)) && !moment.startsOnOrAfter(from),
    )
    .map(({ title, from }) => `“${title}” (no value from ${from})`);
}

/** '“A”, “B” and 4 more'. */
function named(titles: readonly string[]): string {
  const told = titles.slice(0, MOST_NAMED).map((title) => `“${title}”`);
  const more = titles.length - told.length;
  return more > 0 ? `${told.join(', ')} and ${more} more` : told.join(', ');
}

function watch(book: ParameterBook, ids: readonly string[]): Watched {
  const byDay = new Map<LocalDate, string[]>();
  const endings: Watched['endings'] = [];
  for (const id of ids) {
    const declared = book.declaration(id);
    const title = declared?.title ?? id;
    // A club's own values are dated by the club; the declaration's check says nothing about them.
    if (declared && !id.startsWith('club.')) {
      const through = addPlainMonths(declared.checkedOn, declared.recheckAfterMonths, 'clamp-to-month-end');
      byDay.set(through, [...(byDay.get(through) ?? []), title]);
    }
    for (const { from, value } of book.history(id)) {
      if (value === null && from !== null) endings.push({ title, from });
    }
  }
  const recheckBy = [...byDay]
    .map(([through, titles]) => ({ through, titles }))
    .sort((a, b) => (a.through < b.through ? -1 : 1));
  return { recheckBy, endings };
}
