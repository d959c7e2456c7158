import { addDays, type LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import { defineRule } from '../../../engine/rule.js';
import { need } from '../../../engine/unknown.js';
import type { InsuranceFact } from '../../../facts/insurance.js';
import { heldAgainst, PILOT_READS, type Held, type Lack } from './minimums.js';
import { supplyAll } from './supply.js';

/**
 * The pilot in command is one whom the aircraft's insurance covers: named in it, or no less experienced than it asks.
 * Terms once on record bind, whatever the club asks of aircraft without any. Nobody sets it aside: an officer's leave
 * makes nobody insured.
 */
export const insuranceMinimums = defineRule({
  id: 'club.insurance_minimums',
  title: "Pilots the aircraft's insurance covers",
  weight: 'club',
  neverOverridden: true,
  binds: 'pilot',
  reads: ['aircraft.insurance', ...PILOT_READS],
  parameters: ['club.insurance.required', 'club.cost.hours.longest'],
  branches: {
    'not-asked': {
      status: 'not-applicable',
      says: 'No insurance terms are on record for the aircraft, and the club asks for none.',
    },
    'no-terms': {
      status: 'short',
      says: 'No insurance terms on record cover the whole flight{last}.',
    },
    named: {
      status: 'met',
      says: 'The pilot in command is named in the insurance ({source}), through {through}.',
    },
    'named-only': {
      status: 'short',
      says: 'The insurance ({source}) covers named pilots only, and the pilot in command is none of them.',
    },
    enough: {
      status: 'met',
      says: 'The pilot in command meets what the insurance ({source}) asks of pilots, through {through}.',
    },
    'too-little': {
      status: 'short',
      says: 'The insurance ({source}) asks for more than the pilot in command has: {wrong}.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Club handbook, section 8.1',
        status: 'club paper',
        reading:
          'All time logged in aircraft counts, whatever the role; time in training devices never. Time with retractable gear is that in models of the club that have it: of flights in other models the log does not say. A flight exactly so many days back counts. On an instruction flight the instructor is the one who must be covered. The policy itself decides; this reads what was entered of it.',
      },
      judge(f, moment, p, take) {
        const required = p.flag('club.insurance.required');
        const kept = f.peek('aircraft.insurance');
        if (!required && (!kept.known || kept.value.length === 0)) return take('not-asked');
        const all = f.get('aircraft.insurance');
        if (all.length === 0)
          need(null, 'aircraft.insurance', 'no insurance terms are on record for the aircraft');
        const terms = termsDuring(all, moment);
        if (terms === null) return take('no-terms', { last: lastWords(all) });
        const pilot = need(f.crew.picId, 'pic.log', 'the pilot in command is not named');
        const counted = terms.map(({ id, from, source }) => ({ id, on: from, what: source }));
        const through = terms.at(-1)!.through;
        const last = terms.at(-1)!;
        const open = terms.filter(({ namedPilotIds }) => !namedPilotIds.includes(pilot));
        if (open.length === 0) return take('named', { source: last.source, through }, { counted });
        const closed = open.find(({ minimums }) => minimums === null);
        if (closed) return take('named-only', { source: closed.source }, { counted });
        const held = open.map((one) => ({ one, held: heldAgainst(one, one.minimums!, f, moment) }));
        const lacking = held.filter((each) => each.held.lacks.length > 0);
        const lacks = lacking.flatMap((each) => each.held.lacks);
        if (lacks.length > 0) {
          const values = { source: lacking[0]!.one.source, wrong: wordsOf(lacks) };
          const most = () => p.number('club.cost.hours.longest') * 10;
          const remedies = () =>
            supplyAll(lacks, { type: f.get('aircraft.type'), moment, mostTenths: most() });
          return take('too-little', values, { counted, remedies });
        }
        const ends = [through, ...held.flatMap((each) => each.held.ends)].sort();
        return take(
          'enough',
          { source: last.source, through: ends[0]! },
          { counted: [...counted, ...evidence(held.map((each) => each.held))] },
        );
      },
    },
  ],
});

/** The terms that cover the flight day by day, in order; null where a day of it is not covered. */
function termsDuring(all: readonly InsuranceFact[], moment: Moment): InsuranceFact[] | null {
  const during = all
    .filter(
      ({ from, through }) =>
        !moment.endsOnOrBefore(addDays(from, -1)) && !moment.startsOnOrAfter(addDays(through, 1)),
    )
    .sort((a, b) => (`${a.from} ${a.id}` < `${b.from} ${b.id}` ? -1 : 1));
  const [first] = during;
  if (first === undefined || !moment.startsOnOrAfter(first.from)) return null;
  if (!moment.endsOnOrBefore(during.at(-1)!.through)) return null;
  const gap = during.some((one, index) => index > 0 && one.from > addDays(during[index - 1]!.through, 1));
  return gap ? null : during;
}

/** Where the terms on record end, for the end of a sentence. */
function lastWords(all: readonly InsuranceFact[]): string {
  const last: LocalDate = all
    .map(({ through }) => through)
    .sort()
    .at(-1)!;
  return `; those on record run through ${last}`;
}

const wordsOf = (lacks: readonly Lack[]): string => [...new Set(lacks.map(({ what }) => what))].join('; ');

const evidence = (held: readonly Held[]): Held['counted'] => {
  const all = held.flatMap(({ counted }) => counted);
  return all.filter((one, index) => all.findIndex(({ id }) => id === one.id) === index);
};
