/** VOR checks (14 CFR 91.171) and emergency locator transmitters (91.207(c), (f)). */
import { addDays, daysBetween, type DeferralFact, type ItemDetail } from '../../../rules/index.js';
import { SQUAWK } from '../../../rules/workshop/records.js';
import type { NeutralFacts } from '../facts.js';
import type { Mapping } from '../mapping.js';
import { Scene } from '../scene.js';
import { flightRulesOf, onlyItem, validThrough } from './inspections.js';
import { fieldAt } from './route.js';

const VOR = 'check.vor_30_days';

const METHOD: Record<string, ItemDetail['vorMethod']> = {
  test_signal: 'test-signal',
  vot: 'test-signal',
  ground_checkpoint: 'ground-checkpoint',
  airborne_checkpoint: 'airborne-checkpoint',
  airborne_route: 'airborne-route',
  airway: 'airborne-route',
  dual: 'dual',
  dual_vor: 'dual',
  dual_system: 'dual',
};

const vorCheck: Mapping = {
  rules: [VOR],
  map(facts) {
    const asOf = facts.need('as_of', facts.date('as_of'));
    const scene = new Scene(asOf);
    const checked = facts.oneOf(['check_date', 'last_done'], (key) => facts.date(key));
    const usesVor = facts.flag('uses_vor') ?? true;
    const signed = facts.oneOf(['signed', 'signature'], (key) => facts.flag(key)) ?? true;
    const placed = facts.oneOf(['place_recorded', 'recorded'], (key) => facts.flag(key)) ?? true;
    const method = facts.choice('method', METHOD);
    const error = facts.oneOf(['error_deg', 'difference_deg'], (key) => facts.number(key));
    const detail: ItemDetail = {
      vorMethod: method ?? 'ground-checkpoint',
      vorErrorDeg: error ?? 0,
      ...(placed ? { vorPlace: 'XQHB' } : {}),
      ...(signed ? { vorSignedBy: 'A. Member' } : {}),
    };
    scene.flight({ flightRules: flightRulesOf(facts), usesVor });
    onlyItem(scene, 'vor-check', { lastDoneOn: checked ?? null, detail });
    return {
      ...validThrough(scene, VOR, [checked]),
      days_elapsed: () => daysBetween(facts.need('check_date', checked), asOf),
      check_required: () => scene.finding(VOR).status !== 'not-applicable',
    };
  },
};

const ELT = 'elt.battery';

const DEFERRAL: DeferralFact = {
  id: 'deferral-1',
  on: '2027-02-20',
  deadlineOn: null,
  requiredByTypeDesign: false,
  requiredByEquipmentList: false,
  equipmentListItem: null,
  requiredByDirective: false,
  removedOrDeactivated: true,
  placarded: true,
  recorded: true,
  noHazardDeterminedBy: 'M. Mechanic',
};

const eltBattery: Mapping = {
  rules: [ELT],
  map(facts) {
    const asOf = facts.date('as_of') ?? '2027-03-01';
    const scene = new Scene(asOf);
    const detail = batteryOf(facts, asOf);
    const training = facts.flag('training_flight') ?? false;
    const miles = facts.number('max_distance_nm');
    const seats = facts.oneOf(['seats', 'occupant_seats'], (key) => facts.number(key));
    const ferry = facts.oneOf(['ferry', 'ferry_flight'], (key) => facts.flag(key)) ?? false;
    const operative = facts.oneOf(['elt_operative', 'elt_installed'], (key) => facts.flag(key)) ?? true;
    if (training) scene.flight({ purpose: 'dual', instructorId: 'instructor-1', personsOnBoard: 2 });
    if (ferry) scene.flight({ purpose: 'ferry-to-inspection' });
    if (miles !== undefined) scene.flight({ route: fieldAt(scene, miles) });
    if (seats !== undefined) scene.aircraft({ seats, occupantsCertificated: seats });
    removedElt(facts, scene, asOf);
    const battery = (worn: boolean): void => {
      const use = worn ? { eltUseMinutes: 6000 } : {};
      onlyItem(scene, 'elt-battery', {
        detail: { ...detail, ...use },
        lastDoneOn: detail.eltBatteryNewOn ?? null,
      });
    };
    battery(!operative);
    const refused = (): boolean | string => {
      const answer = scene.allows(ELT);
      return typeof answer === 'boolean' ? !answer : answer;
    };
    const halfLife = (): string | null => scene.lastValidDate(ELT, [detail.eltBatteryNewOn]);
    return {
      ...validThrough(scene, ELT, [detail.eltBatteryNewOn]),
      replace: refused,
      half_life_date: halfLife,
      replace_by: halfLife,
      // Required is what an ELT that does not work would ground.
      elt_required: () => {
        battery(true);
        const answer = refused();
        battery(!operative);
        return answer;
      },
    };
  },
};

/** Use, and either the part of its life that is spent or the dates of the battery. */
function batteryOf(facts: NeutralFacts, asOf: string): ItemDetail {
  const life = 10_000;
  const detail: ItemDetail = { eltUseMinutes: facts.number('use_minutes') ?? 0 };
  const fraction = facts.number('useful_life_fraction_used');
  const isNew = facts.oneOf(['battery_new', 'battery_new_on'], (key) => facts.date(key));
  const ends = facts.oneOf(['useful_life_ends', 'useful_life_ends_on'], (key) => facts.date(key));
  const marks = ['replace_by', 'placarded_replace_date', 'marked_replace_date', 'placard_date'];
  const marked = facts.oneOf(marks, (key) => facts.date(key));
  // A part that has been spent is spent before the flight, so the day of the flight begins the next.
  detail.eltBatteryNewOn = addDays(asOf, fraction === undefined ? -365 : -Math.floor(fraction * life) - 1);
  detail.eltBatteryUsefulLifeEndsOn = addDays(detail.eltBatteryNewOn, life);
  if (isNew !== undefined) detail.eltBatteryNewOn = isNew;
  if (ends !== undefined) detail.eltBatteryUsefulLifeEndsOn = ends;
  if (marked !== undefined) detail.eltBatteryReplaceOn = marked;
  return detail;
}

/** An ELT away for repair: so many days, with or without placard and entry. */
function removedElt(facts: NeutralFacts, scene: Scene, asOf: string): void {
  const days = facts.oneOf(['removed_days', 'elt_removed_days', 'days_removed'], (key) => facts.number(key));
  const placarded = facts.oneOf(['placarded', 'placard'], (key) => facts.flag(key)) ?? true;
  const recorded =
    facts.oneOf(['recorded', 'entry', 'logbook_entry', 'record_entry'], (key) => facts.flag(key)) ?? true;
  if (days === undefined) return;
  const removedOn = addDays(asOf, -days);
  const { equipment } = scene.sheet.aircraft;
  if (!equipment.known) throw new Error('the base sheet knows its equipment');
  scene.set(
    'aircraft.equipment',
    equipment.value.map((one) => (one.kind === 'elt' ? { ...one, removedOn } : one)),
  );
  const deferral = { ...DEFERRAL, on: removedOn, placarded, recorded };
  scene.set('aircraft.squawks', [{ ...SQUAWK, state: 'deferred', equipmentId: 'equipment-elt', deferral }]);
}

export const VOR_AND_ELT_MAPS: readonly Mapping[] = [vorCheck, eltBattery];
