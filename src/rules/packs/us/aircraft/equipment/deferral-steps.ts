/** The eight steps of 14 CFR 91.213 for one deferred squawk. */
import { grouped } from '../../../../explain/words.js';
import type { Moment } from '../../../../engine/moment.js';
import type { AircraftType, EquipmentFact, SquawkFact } from '../../../../facts/aircraft.js';

/** Lists under which this very flight needs the equipment. */
export type RequiredBy = 'day' | 'night' | 'ifr' | 'airspace';

/** Why a deferral does not stand for the flight. */
export type Problem =
  | { branch: 'list-only'; words: string }
  | { branch: 'not-small'; words: string }
  | { branch: 'required'; words: string; by: RequiredBy[] }
  | { branch: 'past-deadline'; words: string }
  | { branch: 'not-made-safe'; words: string }
  | { branch: 'unknown'; words: string };

/** What the steps ask about. */
export interface StepsOf {
  squawk: SquawkFact;
  equipment: EquipmentFact | undefined;
  type: AircraftType;
  /** Lists under which this flight needs what the squawk takes away. */
  requiredBy: RequiredBy[];
  smallLb: number;
  moment: Moment;
}

const LIST_WORDS: Record<RequiredBy, string> = {
  day: 'required for every flight',
  night: 'required at night',
  ifr: 'required under IFR',
  airspace: 'required in the airspace of this flight',
};

/** Walks the steps and gives every problem, in their order; none means that the deferral stands. */
export function deferralProblems(of: StepsOf): Problem[] {
  const { squawk, equipment, type, moment } = of;
  const name = `"${squawk.title}"`;
  const unknown = (because: string): Problem => ({ branch: 'unknown', words: `${name}: ${because}` });
  const { deferral } = squawk;
  if (!deferral || !moment.startsOnOrAfter(deferral.on))
    return [unknown('no record of the steps of its deferral by the time of the flight')];
  if (deferral.deadlineOn !== null && !moment.endsOnOrBefore(deferral.deadlineOn))
    return [{ branch: 'past-deadline', words: `${name} was deferred until ${deferral.deadlineOn}` }];

  // (1) An approved list for this aircraft stands alone.
  if (type.approvedEquipmentList === null)
    return [unknown('whether the aircraft is flown under an approved equipment list is not on record')];
  if (type.approvedEquipmentList) {
    if (deferral.equipmentListItem) return [];
    return [{ branch: 'list-only', words: `${name} is not deferred under an item of the approved list` }];
  }
  // (2) Small and without turbine engines.
  if (type.turbine || type.transportCategory)
    return [{ branch: 'not-small', words: `${name}: the aircraft is no small one without turbine engines` }];
  if (type.maxTakeoffLb === null)
    return [unknown('the take-off weight is not on record, so the aircraft may not be a small one')];
  if (type.maxTakeoffLb > of.smallLb)
    return [
      {
        branch: 'not-small',
        words: `${name}: the aircraft is heavier than ${grouped(of.smallLb)} lb`,
      },
    ];
  if (!equipment) return [unknown('it is not on record which equipment it takes out of use')];

  const problems: Problem[] = [];
  const ask = (value: boolean | null, wanted: boolean, no: Problem, because: string): void => {
    if (value === null) problems.push(unknown(because));
    else if (value !== wanted) problems.push(no);
  };
  const required = (why: string): Problem => ({ branch: 'required', words: `${name}: ${why}`, by: [] });
  const step = (why: string): Problem => ({ branch: 'not-made-safe', words: `${name}: ${why}` });
  // (3) and (4)
  if (equipment.requiredByTypeDesign)
    problems.push(required('required by the type design or equipment list'));
  ask(
    deferral.requiredByTypeDesign,
    false,
    required('part of the type certification for VFR by day'),
    'nobody entered whether it is part of the type certification for VFR by day',
  );
  ask(
    deferral.requiredByEquipmentList,
    false,
    required('required on the equipment or kinds-of-operation list'),
    'nobody entered whether the equipment list requires it',
  );
  // (5)
  if (of.requiredBy.length > 0) {
    const why = of.requiredBy.map((list) => LIST_WORDS[list]).join(', ');
    problems.push({ branch: 'required', words: `${name}: ${why}`, by: of.requiredBy });
  }
  // (6)
  ask(
    deferral.requiredByDirective,
    false,
    required('required by a directive'),
    'nobody entered whether a directive requires it',
  );
  // (7)
  ask(
    deferral.removedOrDeactivated,
    true,
    step('not removed or deactivated'),
    'nobody entered that it is off',
  );
  ask(deferral.placarded, true, step('not placarded'), 'nobody entered that it is placarded');
  ask(deferral.recorded, true, step('not entered in the records'), 'nobody entered it in the records');
  // (8)
  if (!deferral.noHazardDeterminedBy)
    problems.push(unknown('nobody has determined that it is no hazard to the flight'));
  return problems;
}
