/** What to know before anybody relies on a status. */
import { daysBetween, localDateOf, toSeconds, type Jurisdiction, type LocalDate } from '../../rules/index.js';
import type { StatusFacts } from './status-lines.js';

/** Sentences, the gravest first. */
export function cautionsOf(
  facts: StatusFacts,
  of: { on: LocalDate; today: LocalDate; zone: string; jurisdiction: Jurisdiction },
): string[] {
  return [
    ...grounding(facts),
    ...itemsNotGood(facts),
    ...meter(facts, of),
    ...unlooked(facts, of.on),
    ...(facts.weight === null ? ['No empty weight is on record.'] : []),
    ...(facts.weight !== null && facts.weight.effectiveOn === null
      ? ['The empty weight is as entered with the aircraft: of what day, and found how, is not on record.']
      : []),
    ...(of.jurisdiction === 'US'
      ? []
      : [
          'Limits are those the items name; the law of airworthiness of this country is not held in this service.',
        ]),
    ...(of.on < of.today
      ? [
          `This is the status of a past day, ${of.on}, by the records as they stand now: what was entered or voided later is as it is now.`,
        ]
      : []),
  ];
}

function grounding({ squawks }: StatusFacts): string[] {
  const held = squawks.filter(({ state }) => state === 'grounding');
  return held.length === 0 ? [] : [`Grounded by a squawk: ${held.map(({ title }) => title).join('; ')}.`];
}

function itemsNotGood({ items, directives }: StatusFacts): string[] {
  const all = [...items, ...directives];
  const titles = (state: string): string =>
    all
      .filter((item) => item.state === state)
      .map(({ title }) => title)
      .join('; ');
  const says = (state: string, words: string): string[] =>
    titles(state) === '' ? [] : [`${words}: ${titles(state)}.`];
  return [
    ...says('overdue', 'Overdue'),
    ...says('never-done', 'Never done, as far as the records go'),
    ...says('unknown', 'When it is due cannot be told from the records'),
  ];
}

function meter(facts: StatusFacts, { on, zone }: { on: LocalDate; zone: string }): string[] {
  const reading = facts.times.find(({ countsForInspections }) => countsForInspections);
  if (!reading)
    return ['No reading of the inspection meter is on record: hours left cannot be told for any item.'];
  const readOn = localDateOf(toSeconds(reading.readAt), zone);
  if (daysBetween(readOn, on) === 0) return [];
  return [`The inspection meter was last read on ${readOn}; hours flown since then are not counted.`];
}

function unlooked({ squawks }: StatusFacts, on: LocalDate): string[] {
  const reported = squawks.filter(({ state }) => state === 'reported').length;
  const late = squawks.filter(({ deadlineOn }) => deadlineOn !== null && deadlineOn < on);
  const open = squawks.filter(({ openSteps }) => openSteps.length > 0);
  return [
    ...(reported === 0 ? [] : [`Squawks not yet judged by the coordinator: ${reported}.`]),
    ...(late.length === 0
      ? []
      : [`Deferrals past their deadline: ${late.map(({ title }) => title).join('; ')}.`]),
    ...(open.length === 0
      ? []
      : [`Deferrals with steps not on record: ${open.map(({ title }) => title).join('; ')}.`]),
  ];
}
