import { addDays, type LocalDate } from '../../../calendar/dates.js';
import type { Moment } from '../../../engine/moment.js';
import { defineRule, type Counted } from '../../../engine/rule.js';
import type { LogFact } from '../../../facts/person.js';
import { landingsInModelRemedies } from './model-recency-remedies.js';

/**
 * Club rule: to take a model without an instructor, the pilot in command has made so many landings in it lately, with
 * hands on the controls. Time in a simulator does not count. It does not bind while instruction is given.
 */
export const modelRecency = defineRule({
  id: 'club.model_recency',
  title: 'Recent landings in the model',
  weight: 'club',
  binds: 'pilot',
  reads: ['pic.log', 'aircraft.type'],
  parameters: ['club.model-recency.days', 'club.model-recency.landings'],
  branches: {
    'not-asked': { status: 'not-applicable', says: 'The club asks for no recent landings in the model.' },
    'with-instructor': {
      status: 'not-applicable',
      says: 'Recent landings in the model are not asked while instruction is given.',
    },
    enough: {
      status: 'met',
      says: '{landings} landings in the {model} in the preceding {days} days; good through {through}.',
    },
    short: {
      status: 'short',
      says: '{landings} of {needed} landings in the {model} in the preceding {days} days.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Club handbook, section 3.2',
        status: 'club paper',
        reading:
          'A landing exactly that many days before the flight counts; the flight is tested to its end.',
      },
      judge(f, moment, p, take) {
        const needed = p.number('club.model-recency.landings');
        if (needed === 0) return take('not-asked');
        if (f.crew.instruction) return take('with-instructor');
        const days = p.number('club.model-recency.days');
        const type = f.get('aircraft.type');
        const count = countInModel(f.get('pic.log'), type.modelId, moment, days, needed);
        const values = {
          landings: count.landings,
          needed,
          days,
          model: type.makeModel,
          through: count.through ?? '',
        };
        if (count.landings >= needed) return take('enough', values, { counted: count.counted });
        return take('short', values, {
          counted: count.counted,
          remedies: () => landingsInModelRemedies({ type, needed, days, moment, flight: f.flight }),
        });
      },
    },
  ],
});

/** Counts landings in the model, newest first; `through` is the last date on which they are still enough. */
function countInModel(
  log: readonly LogFact[],
  modelId: string,
  moment: Moment,
  days: number,
  needed: number,
): { landings: number; through: LocalDate | null; counted: Counted[] } {
  const inModel = (entry: LogFact): boolean =>
    entry.modelId === modelId && entry.device === null && entry.soleManipulator && entry.landings > 0;
  const untold = moment.aside();
  const recent = log
    // The cheap question first: of a long log hardly anything lies within the days.
    .filter((entry) => untold.endsWithinDaysOf(entry.on, days) && inModel(entry))
    .filter((entry) => untold.departsAtOrAfter(entry.departedAt))
    .sort(newestFirst);
  let landings = 0;
  let governing: LocalDate | null = null;
  const counted: Counted[] = [];
  for (const entry of recent) {
    if (landings < needed) {
      counted.push({
        id: entry.id,
        on: entry.on,
        what: `${entry.landings} landing${entry.landings === 1 ? '' : 's'}`,
      });
      // The date of an entry and its instant may disagree across zones, so the earliest of those needed governs.
      if (governing === null || entry.on < governing) governing = entry.on;
    }
    landings += entry.landings;
  }
  // While it is enough only the oldest flight it rests on can end it; short of it any flight yet to come may cure it.
  if (governing !== null && landings >= needed) moment.endsWithinDaysOf(governing, days);
  else for (const entry of log) moment.departsAtOrAfter(entry.departedAt);
  return { landings, through: governing === null ? null : addDays(governing, days), counted };
}

function newestFirst(a: LogFact, b: LogFact): number {
  if (a.departedAt !== b.departedAt) return a.departedAt < b.departedAt ? 1 : -1;
  return a.id < b.id ? 1 : -1;
}
