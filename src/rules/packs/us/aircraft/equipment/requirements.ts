/** Holds the panel against the lists of required equipment. */
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import type { Effect, Remedy } from '../../../../engine/remedy.js';
import type { Counted, FactView } from '../../../../engine/rule.js';
import { UnknownFact } from '../../../../engine/unknown.js';
import type { AircraftType, EquipmentFact, EquipmentKind } from '../../../../facts/aircraft.js';
import { touchesNight, type NightKind } from '../../../../sky/nights.js';
import { ELT_PARAMETERS, ELT_READS, eltException } from '../inspections/elt-need.js';
import { fittedOf, panelOf, works, type Fitted, type Panel } from './panel.js';
import { REQUIRED_EQUIPMENT, type EquipmentList, type Requirement } from './required-equipment.js';

export const EQUIPMENT_READS = [...ELT_READS] as const;
export const EQUIPMENT_PARAMETERS = [
  'us.equipment.harness-after',
  'us.equipment.dme-from-ft',
  ...ELT_PARAMETERS,
] as const;

type Reads = FactView<(typeof EQUIPMENT_READS)[number]>;

/** A line that is not satisfied, and the equipment that would serve it if it worked. */
export interface Wanting {
  /** What is wanted, in words. */
  words: string;
  anyOf: readonly EquipmentKind[];
  down: Fitted[];
  /** Which night asks for it, on the night list. */
  night: NightKind;
}

export interface ListState {
  panel: Panel;
  wanting: Wanting[];
  conditions: string[];
  /** What the record does not say; something is wanting besides. */
  unknown: string[];
}

/** 14 CFR 91.205 is about powered aircraft. */
export const isPowered = (type: AircraftType): boolean =>
  type.category !== 'glider' && type.category !== 'lighter-than-air';

/** What of a list is wanting on this flight. Throws UnknownFact where the record does not say whether a line applies. */
export function listState(f: Reads, list: EquipmentList, moment: Moment, p: Parameters): ListState {
  const type = f.get('aircraft.type');
  const panel = panelOf(f.get('aircraft.equipment'), f.get('aircraft.squawks'), moment);
  const wanting: Wanting[] = [];
  const conditions: string[] = [];
  const unknown: string[] = [];
  for (const requirement of REQUIRED_EQUIPMENT) {
    if (requirement.list !== list) continue;
    const down = downFor(requirement, panel, type);
    if (down === null) continue;
    const applies = requirement.when({
      type,
      flight: f.flight,
      panel,
      p,
      eltException: () => eltException(f, moment, p),
    });
    if (applies === 'no') continue;
    if (applies === 'yes') {
      const { words, anyOf, night } = requirement;
      wanting.push({ words, anyOf, down, night });
    } else if ('unless' in applies) conditions.push(...applies.unless);
    else unknown.push(applies.unknown);
  }
  if (wanting.length === 0 && unknown.length > 0) throw new UnknownFact('aircraft.type', unknown.join('; '));
  return { panel, wanting, conditions: [...new Set(conditions)], unknown };
}

/** What of the night list this flight needs: all in civil night, some from sunset on. The sun is asked only for these. */
export function wantedAtNight(f: Reads, wanting: readonly Wanting[], moment: Moment): Wanting[] {
  const { route } = f.flight;
  if (wanting.length === 0) return [];
  if (touchesNight(moment, route, 'civil')) return [...wanting];
  const fromSunset = wanting.filter(({ night }) => night === 'lights');
  return fromSunset.length > 0 && touchesNight(moment, route, 'lights') ? fromSunset : [];
}

/** The night to keep out of, to do without what is wanting. */
export const nightOf = (wanting: readonly Wanting[]): NightKind =>
  wanting.some(({ night }) => night === 'lights') ? 'lights' : 'civil';

/** Null when the line is satisfied, else the equipment that would serve it. */
function downFor(requirement: Requirement, panel: Panel, type: AircraftType): Fitted[] | null {
  const serving = fittedOf(panel, requirement.anyOf);
  const every =
    requirement.each === 'tank' ||
    requirement.each === 'occupant' ||
    (requirement.each === 'engine' && type.engines > 1);
  const enough = every ? serving.length > 0 && serving.every(works) : serving.some(works);
  return enough ? null : serving.filter((one) => !works(one));
}

/** Lines named in a sentence; of an empty panel nobody reads them all. */
const MOST_NAMED = 5;

/** 'an altimeter (altimeter: "sticks at 2,000 ft")'; each squawk is told once, and of a long list the first few. */
export function wantingWords(wanting: readonly Wanting[]): string {
  const told = new Set<string>();
  const named = wanting.slice(0, MOST_NAMED).map(({ words, down }) => {
    const why = down.flatMap((one) =>
      one.squawks.flatMap(({ id, title }) => {
        if (told.has(id)) return [];
        told.add(id);
        return [`${one.equipment.name}: "${title}"`];
      }),
    );
    return why.length > 0 ? `${words} (${why.join('; ')})` : words;
  });
  const more = wanting.length - named.length;
  return more > 0 ? `${named.join(', ')} and ${more} more` : named.join(', ');
}

/** The squawks that take required equipment out of use. */
export function wantingCounted(wanting: readonly Wanting[]): Counted[] {
  const counted = new Map<string, Counted>();
  for (const one of wanting.flatMap(({ down }) => down)) {
    for (const squawk of one.squawks)
      counted.set(squawk.id, { id: squawk.id, on: null, what: `${one.equipment.name}: ${squawk.title}` });
  }
  return [...counted.values()].sort((a, b) => (a.id < b.id ? -1 : 1));
}

/** Fixes what is down and fits what is missing, in one visit to the shop. */
export function restoreEquipment(wanting: readonly Wanting[], moment: Moment): Remedy[] {
  const today = moment.knowledgeDate();
  if (wanting.length === 0 || !moment.departsAtOrAfter(moment.hoursFromKnowledge(0))) return [];
  const squawks = new Set(
    wanting.flatMap(({ down }) => down.flatMap((one) => one.squawks.map(({ id }) => id))),
  );
  const missing = new Map(wanting.filter(({ down }) => down.length === 0).map((one) => [one.anyOf[0]!, one]));
  const fixes = [...squawks].sort().map((id): Effect => ({
    op: 'amend',
    fact: 'aircraft.squawks',
    id,
    fields: { state: 'fixed', closedAt: moment.hoursFromKnowledge(0) },
  }));
  const fittings = [...missing].map(([kind, { words }]): Effect => ({
    op: 'append',
    fact: 'aircraft.equipment',
    value: {
      id: `planned:install-equipment-${kind}`,
      kind,
      name: words,
      installedOn: today,
      removedOn: null,
      portable: false,
      requiredByTypeDesign: false,
      satisfies: [],
    } satisfies EquipmentFact,
  }));
  const fit = missing.size > 0;
  return [
    {
      act: fit ? 'install-equipment' : 'fix-squawk',
      title: fit
        ? `Have fitted and working: ${wanting.map(({ words }) => words).join(', ')}.`
        : `Have repaired: ${wanting.map(({ words }) => words).join(', ')}.`,
      by: 'mechanic',
      effects: [...fixes, ...fittings],
    },
  ];
}
