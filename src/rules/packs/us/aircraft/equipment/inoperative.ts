import { defineRule, type FactView } from '../../../../engine/rule.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import type { Remedy } from '../../../../engine/remedy.js';
import { UnknownFact } from '../../../../engine/unknown.js';
import type { SquawkFact } from '../../../../facts/aircraft.js';
import type { NightKind } from '../../../../sky/nights.js';
import { equipmentInoperative1 } from '../../../../versions/past/inoperative-1.js';
import { ferried } from '../../../common/permits/permit-flight.js';
import { fixSquawks } from '../../../common/squawks/squawk-remedies.js';
import { flyByDay } from '../../../common/shared/by-day.js';
import { CHANGE_TO_VFR } from '../../../common/shared/flight-changes.js';
import { deferralProblems, type Problem, type RequiredBy } from './deferral-steps.js';
import { isOpen } from '../../../common/squawks/open.js';
import {
  EQUIPMENT_PARAMETERS,
  EQUIPMENT_READS,
  isPowered,
  listState,
  nightOf,
  wantedAtNight,
  type Wanting,
} from './requirements.js';
import type { EquipmentList } from './required-equipment.js';
import { devices, needOf, planAround, TRANSPONDER_PARAMETERS } from './transponder-state.js';

type Reads = FactView<(typeof EQUIPMENT_READS)[number]>;
type Short = Exclude<Problem['branch'], 'unknown'>;

/** Order in which problems name the finding, gravest first. */
const GRAVEST: readonly Short[] = ['required', 'past-deadline', 'list-only', 'not-small', 'not-made-safe'];

/**
 * 14 CFR 91.213: flying with something inoperative. Each deferred squawk is walked through the steps for this very
 * flight: the same deferral may stand for VFR by day and not at night.
 */
export const equipmentInoperative = defineRule({
  id: 'equipment.inoperative',
  title: 'Inoperative equipment',
  weight: 'law',
  binds: 'aircraft',
  reads: [...EQUIPMENT_READS, 'aircraft.permits'],
  parameters: ['us.equipment.small-aircraft-lb', ...EQUIPMENT_PARAMETERS, ...TRANSPONDER_PARAMETERS],
  branches: {
    'none-deferred': { status: 'not-applicable', says: 'No squawk is deferred.' },
    stands: { status: 'met', says: 'Deferred for this flight, step by step: {squawks}.' },
    'under-permit': {
      status: 'met',
      says: 'Not deferrable for this flight: {problems}; a special flight permit covers this ferry flight.',
    },
    'permit-crew-only': {
      status: 'short',
      says: 'Not deferrable for this flight: {problems}; a special flight permit carries nobody but required crew.',
    },
    required: { status: 'short', says: 'May not be inoperative on this flight: {problems}.' },
    'past-deadline': { status: 'short', says: 'The time of a deferral is over: {problems}.' },
    'list-only': { status: 'short', says: 'Only the approved equipment list may defer: {problems}.' },
    'not-small': { status: 'short', says: 'May not be deferred without an approved list: {problems}.' },
    'not-made-safe': { status: 'short', says: 'The deferral is not finished: {problems}.' },
  },
  bodies: [
    {
      version: 2,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.213(a), (d), (e)',
        status: 'seen',
        reading:
          'An entry in the records is asked for whether the equipment was removed or deactivated. Without an entry ' +
          'for a step, the engine cannot tell.',
      },
      judge(f, moment, p, take) {
        const deferred = f
          .get('aircraft.squawks')
          .filter((squawk) => squawk.state === 'deferred' && isOpen(squawk, moment))
          .sort((a, b) => (a.id < b.id ? -1 : 1));
        if (deferred.length === 0) return take('none-deferred');
        const equipment = f.get('aircraft.equipment');
        const type = f.get('aircraft.type');
        const found = deferred.map((squawk) => ({
          squawk,
          problems: deferralProblems({
            squawk,
            equipment: equipment.find((one) => one.id === squawk.equipmentId),
            type,
            requiredBy: requiredBy(f, squawk, moment, p),
            smallLb: p.number('us.equipment.small-aircraft-lb'),
            moment,
          }),
        }));
        const counted = deferred.map((squawk) => ({
          id: squawk.id,
          on: squawk.deferral?.on ?? null,
          what: squawk.title,
        }));
        const all = found.flatMap((one) => one.problems);
        const branch = GRAVEST.find((name) => all.some((problem) => problem.branch === name));
        if (!branch) {
          const unknown = all.map((problem) => problem.words);
          if (unknown.length > 0) throw new UnknownFact('aircraft.squawks', unknown.join('; '));
          const conditions = type.approvedEquipmentList
            ? deferred.map(
                ({ deferral }) =>
                  `Follow item ${deferral!.equipmentListItem} of the approved equipment list.`,
              )
            : [];
          return take('stands', { squawks: deferred.map(inWords).join(', ') }, { counted, conditions });
        }
        const values = { problems: all.map((problem) => problem.words).join('; ') };
        const wrong = found.filter((one) => one.problems.length > 0);
        const remedies = () => cures(f, wrong, moment, p);
        const { branch: ferry, ...told } = ferried(f, moment, remedies);
        return take(ferry ?? branch, values, { counted, ...told });
      },
    },
  ],
  superseded: [equipmentInoperative1 as never],
  changed:
    'A transponder or ADS-B Out that is inoperative is required near a listed primary airport too; only the airspace named and the altitude asked for it.',
});

/** '"landing light out" (until 2027-05-01)'. */
const inWords = ({ title, deferral }: SquawkFact): string =>
  deferral!.deadlineOn ? `"${title}" (until ${deferral!.deadlineOn})` : `"${title}"`;

/** What of a list the squawk takes away. */
function takenAway(
  f: Reads,
  squawk: SquawkFact,
  list: EquipmentList,
  moment: Moment,
  p: Parameters,
): Wanting[] {
  if (!isPowered(f.get('aircraft.type'))) return [];
  return listState(f, list, moment, p).wanting.filter(({ down }) =>
    down.some((one) => one.squawks.some(({ id }) => id === squawk.id)),
  );
}

/** Step 5: the lists of this flight that want what the squawk takes away. Night is asked last. */
function requiredBy(f: Reads, squawk: SquawkFact, moment: Moment, p: Parameters): RequiredBy[] {
  const from = (list: EquipmentList): Wanting[] => takenAway(f, squawk, list, moment, p);
  const airspace = (): boolean =>
    needOf(f, p).needed &&
    devices(f, moment, p).some(
      (one) => one.at === 'down' && one.fitted.some((fitted) => fitted.equipment.id === squawk.equipmentId),
    );
  return [
    ...(from('day').length > 0 ? (['day'] as const) : []),
    ...(f.flight.flightRules === 'IFR' && from('ifr').length > 0 ? (['ifr'] as const) : []),
    ...(airspace() ? (['airspace'] as const) : []),
    ...(wantedAtNight(f, from('night'), moment).length > 0 ? (['night'] as const) : []),
  ];
}

/** What cures all problems at once: repair, finishing the deferrals, or another flight where only its kind is in the way. */
function cures(
  f: Reads,
  wrong: readonly { squawk: SquawkFact; problems: Problem[] }[],
  moment: Moment,
  p: Parameters,
): Remedy[] {
  const problems = wrong.flatMap((one) => one.problems);
  const only = (list: RequiredBy): boolean =>
    problems.every((one) => one.branch === 'required' && one.by.length === 1 && one.by[0] === list);
  const dark = (): NightKind =>
    nightOf(wrong.flatMap(({ squawk }) => takenAway(f, squawk, 'night', moment, p)));
  const unfinished = problems.every((one) => one.branch === 'not-made-safe');
  return [
    ...(unfinished ? [finishDeferrals(wrong.map((one) => one.squawk))] : []),
    ...(only('ifr') ? [CHANGE_TO_VFR] : []),
    ...(only('night') ? flyByDay(moment, f.flight.route, dark()) : []),
    ...(only('airspace') ? planAround(f, p) : []),
    ...fixSquawks(
      wrong.map((one) => one.squawk),
      moment,
    ),
  ];
}

/** Removes or deactivates, placards and enters what is deferred. */
function finishDeferrals(squawks: readonly SquawkFact[]): Remedy {
  return {
    act: 'defer-squawk',
    title: `Deactivate or remove, placard and enter: ${squawks.map(({ title }) => `"${title}"`).join(', ')}.`,
    by: 'mechanic',
    effects: squawks.map(({ id, deferral }) => ({
      op: 'amend',
      fact: 'aircraft.squawks',
      id,
      fields: { deferral: { ...deferral, removedOrDeactivated: true, placarded: true, recorded: true } },
    })),
  };
}
