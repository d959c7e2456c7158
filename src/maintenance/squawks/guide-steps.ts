/**
 * The steps of 14 CFR 91.213(d) in the order of the section, as questions: what the aircraft's record answers, and what
 * only a person can. Source: 14 CFR 91.213(d)(1) to (4), from memory.
 */
import type { AircraftType, EquipmentFact } from '../../rules/index.js';
import type { KindOfFlight } from '../trials/kinds-of-flight.js';

export type Answered = 'yes' | 'no' | 'open';

export interface GuideStep {
  id: string;
  /** Where it stands in the section. */
  paragraph: string;
  question: string;
  answer: Answered;
  /** Who answers: the aircraft's record, the rules asked about flights, or a person. */
  by: 'record' | 'rules' | 'person';
  /** Field of the deferral that keeps a person's answer. */
  field: string | null;
  /** Whether this answer rules a deferral out. */
  stops: boolean;
  says: string;
}

/** Answers of a deferral on record, by field; null where nobody answered. */
export type Recorded = Partial<Record<string, boolean | string | null>>;

export interface GuideOf {
  type: AircraftType;
  /** The equipment the squawk names; null where it names none. */
  equipment: EquipmentFact | null;
  /** Kinds of flight that need it; null where it cannot be told. */
  neededFor: { kind: KindOfFlight; title: string; says: string }[] | null;
  /** Directives on record that hang on the equipment. */
  directives: string[];
  recorded: Recorded;
  smallLb: number;
}

const NAME_FIRST = 'Say first which equipment the squawk is about.';

export function guideSteps(of: GuideOf): GuideStep[] {
  return [
    smallStep(of),
    typeDesign(of),
    equipmentList(of),
    kindsOfFlight(of),
    directive(of),
    ...madeSafe(of),
  ];
}

/** What an aircraft under an approved list is asked instead: the list alone decides (91.213(a)). */
export function listStep({ recorded }: Pick<GuideOf, 'recorded'>): GuideStep {
  const item = recorded['equipmentListItem'];
  return {
    ...{ id: 'list-item', paragraph: '91.213(a)', by: 'person', field: 'equipmentListItem', stops: false },
    question: 'Under which item of the approved minimum equipment list is it deferred?',
    answer: item ? 'yes' : 'open',
    says: item
      ? `Item ${String(item)}, as entered.`
      : 'The approved list alone decides. Without an item of it, no deferral.',
  };
}

function smallStep({ type, smallLb }: GuideOf): GuideStep {
  const step = {
    ...({ id: 'small-aircraft', paragraph: '91.213(d)(1)', by: 'record', field: null } as const),
    question: 'Is it a small aircraft without turbine engines?',
  };
  if (type.turbine || type.transportCategory)
    return {
      ...step,
      answer: 'no',
      stops: true,
      says: 'It has turbine engines or is of transport category.',
    };
  if (type.maxTakeoffLb === null)
    return { ...step, answer: 'open', stops: false, says: 'The greatest take-off weight is not on record.' };
  const small = type.maxTakeoffLb <= smallLb;
  const weight = `Its greatest take-off weight is ${type.maxTakeoffLb} lb; small is up to ${smallLb} lb.`;
  return { ...step, answer: small ? 'yes' : 'no', stops: !small, says: weight };
}

function typeDesign({ equipment, recorded }: GuideOf): GuideStep {
  const question =
    'Is it part of the instruments and equipment prescribed for VFR by day under the type certification?';
  const step = { id: 'type-design', paragraph: '91.213(d)(2)(i)', question, field: 'requiredByTypeDesign' };
  if (equipment?.requiredByTypeDesign)
    return {
      ...step,
      ...{ answer: 'yes', by: 'record', stops: true },
      says: `${equipment.name} is recorded as required by the type design.`,
    };
  return person(step, recorded, 'yes', 'Look in the type certificate data and the flight manual.');
}

const equipmentList = ({ recorded }: GuideOf): GuideStep =>
  person(
    {
      ...{ id: 'equipment-list', paragraph: '91.213(d)(2)(ii)', field: 'requiredByEquipmentList' },
      question:
        "Is it required on the aircraft's equipment list, or on its kinds of operations equipment list, for the flights it is used for?",
    },
    recorded,
    'yes',
    'Look in the equipment list and the kinds of operations equipment list.',
  );

function kindsOfFlight({ neededFor, equipment }: GuideOf): GuideStep {
  const step = {
    ...({ id: 'kind-of-flight', paragraph: '91.213(d)(2)(iii)', by: 'rules', field: null } as const),
    question: 'Does 14 CFR 91.205, or another rule of part 91, require it for the kind of flight?',
  };
  if (equipment === null) return { ...step, answer: 'open', stops: false, says: NAME_FIRST };
  if (neededFor === null)
    return { ...step, answer: 'open', stops: false, says: 'It cannot be told from what is on record.' };
  if (neededFor.length === 0)
    return { ...step, answer: 'no', stops: false, says: 'For none of the flights tried.' };
  const always = neededFor.some(({ kind }) => kind === 'day-vfr');
  const says = neededFor.map(({ title, says: why }) => `${title}: ${why}`).join(' ');
  return { ...step, answer: 'yes', stops: always, says };
}

function directive({ directives, recorded }: GuideOf): GuideStep {
  const on = directives.map((title) => `"${title}"`).join(', ');
  const hint =
    directives.length === 0
      ? 'No directive on record names it. Look through the directives of the type.'
      : `On record for it: ${on}. Read whether it has to be operational.`;
  const question = 'Does an airworthiness directive require it to be operational?';
  const step = { id: 'directive', paragraph: '91.213(d)(2)(iv)', question, field: 'requiredByDirective' };
  return person(step, recorded, 'yes', hint);
}

function madeSafe({ recorded }: GuideOf): GuideStep[] {
  const no = recorded['noHazardDeterminedBy'];
  return [
    person(
      {
        ...{ id: 'removed-or-deactivated', paragraph: '91.213(d)(3)', field: 'removedOrDeactivated' },
        question: 'Is it removed, or deactivated?',
      },
      recorded,
      'none',
      'What is maintenance in this is done and recorded under part 43.',
    ),
    person(
      {
        ...{ id: 'placarded', paragraph: '91.213(d)(3)', field: 'placarded' },
        question: "Is it placarded 'Inoperative', or its control placarded where it was removed?",
      },
      recorded,
      'none',
      'The placard stands where the pilot sees it.',
    ),
    person(
      {
        ...{ id: 'recorded', paragraph: '91.213(d)(3)', field: 'recorded' },
        question: 'Is it entered in the maintenance record?',
      },
      recorded,
      'none',
      'Entered under 14 CFR 43.9.',
    ),
    {
      ...{
        id: 'no-hazard',
        paragraph: '91.213(d)(4)',
        by: 'person',
        field: 'noHazardDeterminedBy',
        stops: false,
      },
      question: 'Who determined that it is no hazard to the aircraft?',
      answer: no ? 'yes' : 'open',
      says: no
        ? `${String(no)}, as entered.`
        : 'An appropriately rated pilot, or a person certificated and rated to maintain the aircraft.',
    },
  ];
}

function person(
  step: Pick<GuideStep, 'id' | 'paragraph' | 'question'> & { field: string },
  recorded: Recorded,
  stopsAt: 'yes' | 'none',
  hint: string,
): GuideStep {
  const value = recorded[step.field];
  const answer: Answered = value === true ? 'yes' : value === false ? 'no' : 'open';
  return { ...step, answer, by: 'person', stops: stopsAt === answer, says: hint };
}
