/** Inspections by calendar: 14 CFR 91.409(a), 91.411, 91.413, 91.207(d); registration by 47.40. */
import type { ItemFact, ItemKind, LocalDate } from '../../../rules/index.js';
import { ITEM, REGISTRATION } from '../../../rules/workshop/records.js';
import type { NeutralFacts } from '../facts.js';
import type { Found, Mapping } from '../mapping.js';
import { Scene } from '../scene.js';

const FLIGHT_RULES = { VFR: 'VFR', IFR: 'IFR', vfr: 'VFR', ifr: 'IFR' } as const;

/** Reads `flight_rules`, VFR unless said; both spellings are used. */
export const flightRulesOf = (facts: NeutralFacts): 'VFR' | 'IFR' =>
  facts.oneOf(['flight_rules', 'rules'], (key) => facts.choice(key, FLIGHT_RULES)) ?? 'VFR';

/** Replaces the aircraft's items by one of a kind, made from the base sheet's own of that kind. */
export function onlyItem(scene: Scene, kind: ItemKind, fields: Partial<ItemFact>): ItemFact {
  const { items } = scene.sheet.aircraft;
  const base = items.known ? items.value.find((one) => one.kind === kind) : undefined;
  const item: ItemFact = { ...(base ?? { ...ITEM, kind }), ...fields };
  scene.set('aircraft.items', [...(items.known ? items.value.filter((one) => one.kind !== kind) : []), item]);
  return item;
}

/** Found values of a rule that is met through a date. */
export function validThrough(scene: Scene, rule: string, events: readonly (LocalDate | undefined)[]): Found {
  const allows = (): boolean | string => scene.allows(rule);
  const blocked = (): boolean | string => {
    const answer = scene.allows(rule);
    return typeof answer === 'boolean' ? !answer : answer;
  };
  const through = (): LocalDate | null => scene.lastValidDate(rule, events);
  return {
    valid: allows,
    allowed: allows,
    flight_allowed: allows,
    flight_blocked: blocked,
    valid_through: through,
    last_valid_date: through,
    due_date: through,
  };
}

/** Rule name and kind of item share their intervals with the base sheet, which takes them from the rules reference. */
const KIND: Record<string, ItemKind> = {
  'inspection.annual': 'annual',
  'inspection.altimeter_static': 'altimeter-static',
  'inspection.transponder': 'transponder',
  'inspection.elt': 'elt-inspection',
};

const byCalendar: Mapping = {
  rules: Object.keys(KIND),
  map(facts, rule) {
    const scene = new Scene(facts.need('as_of', facts.date('as_of')));
    const lastDoneOn = facts.date('last_done') ?? null;
    const uses = facts.oneOf(['uses_transponder', 'transponder_used'], (key) => facts.flag(key)) ?? true;
    scene.flight({ flightRules: flightRulesOf(facts), usesTransponder: uses });
    const opened = facts.oneOf(['static_system_opened', 'static_opened', 'static_system_opened_on'], (key) =>
      facts.date(key),
    );
    const detail = opened === undefined ? null : { staticOpenedOn: opened };
    onlyItem(scene, KIND[rule]!, { lastDoneOn, detail });
    return validThrough(scene, rule, [lastDoneOn ?? undefined]);
  },
};

const registration: Mapping = {
  rules: ['registration.validity'],
  map(facts, rule) {
    const scene = new Scene(facts.need('as_of', facts.date('as_of')));
    const issuedOn = facts.oneOf(['last_done', 'issued', 'issue_date'], (key) => facts.date(key));
    const printed = facts.oneOf(['printed_expiry', 'printed_expiration'], (key) => facts.date(key));
    const ended = facts.oneOf(['sold', 'sold_on', 'sale_date', 'terminated', 'ended'], (key) =>
      facts.date(key),
    );
    const one = {
      ...REGISTRATION,
      issuedOn: facts.need('last_done', issuedOn),
      printedExpiryOn: printed ?? null,
      endedOn: ended ?? null,
    };
    scene.set('aircraft.registration', [one]);
    return validThrough(scene, rule, [printed, issuedOn]);
  },
};

export const INSPECTION_MAPS: readonly Mapping[] = [byCalendar, registration];
