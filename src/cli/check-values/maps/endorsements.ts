/** Additional training (14 CFR 61.31(e) to (i)): which endorsements an aircraft calls for. */
import type { AircraftClass, EndorsementFact, EndorsementKind } from '../../../rules/index.js';
import { ENDORSEMENT } from '../../../rules/workshop/records.js';
import type { Mapping } from '../mapping.js';
import { Scene } from '../scene.js';
import { CATEGORY, CLASS, USUAL_CLASS } from './words.js';

/** Our rules' last names are the files' names for the endorsements. */
const KINDS = ['complex', 'high_performance', 'high_altitude', 'tailwheel'] as const;
const RULE = 'endorsement.additional_training';

const additionalTraining: Mapping = {
  rules: [RULE, ...KINDS.map((kind) => `${RULE}.${kind}`)],
  map(facts, rule) {
    const scene = new Scene(facts.date('as_of') ?? '2027-03-01');
    const flag = (...keys: string[]): boolean => facts.oneOf(keys, (key) => facts.flag(key)) ?? false;
    const number = (...keys: string[]): number | undefined => facts.oneOf(keys, (key) => facts.number(key));
    const category = facts.choice('category', CATEGORY) ?? 'airplane';
    const sea = flag('sea', 'seaplane', 'floats');
    const named: AircraftClass | undefined = facts.choice('class', CLASS);
    const propeller = flag('controllable_pitch_prop', 'controllable_pitch_propeller');
    const electronic = flag('electronic_engine_prop_control', 'electronic_control', 'fadec');
    const ceiling = number('service_ceiling_ft');
    const highest = number('max_operating_altitude_ft');
    scene.aircraft({
      category,
      class: named ?? (sea ? 'single-engine-sea' : USUAL_CLASS[category]),
      retractableGear: flag('retractable', 'retractable_gear'),
      flaps: flag('flaps'),
      controllablePropeller: propeller || electronic,
      powerPerEngineHp: number('engine_hp'),
      engines: number('engines'),
      tailwheel: flag('tailwheel'),
      pressurised: flag('pressurized', 'pressurised'),
      serviceCeilingFt: ceiling ?? (highest === undefined ? undefined : highest),
      maxOperatingAltitudeFt: highest ?? (ceiling === undefined ? undefined : ceiling),
    });
    scene.set('member.endorsements', [
      ...KINDS.flatMap((kind): EndorsementFact[] => {
        const logged = facts.oneOf([`logged_${kind}_pic_date`, `${kind}_pic_date`], (key) => facts.date(key));
        const given = facts.oneOf([`${kind}_endorsement_date`, `${kind}_endorsement`], (key) =>
          facts.date(key),
        );
        const our = kind.replace('_', '-') as 'complex' | 'high-performance' | 'high-altitude' | 'tailwheel';
        const one = (of: EndorsementKind, on: string): EndorsementFact => ({
          ...ENDORSEMENT,
          id: `${of}-x`,
          kind: of,
          on,
        });
        return [
          ...(logged === undefined ? [] : [one(`grandfather-${our}`, logged)]),
          ...(given === undefined ? [] : [one(our, given)]),
        ];
      }),
    ]);
    const missing = (kind: string): boolean => {
      const answer = scene.allows(`${RULE}.${kind}`);
      if (typeof answer === 'string') throw new Error(answer);
      return !answer;
    };
    return {
      endorsements_required: () => KINDS.filter(missing),
      allowed: () => (rule === RULE ? !KINDS.some(missing) : scene.allows(rule)),
    };
  },
};

export const ENDORSEMENT_MAPS: readonly Mapping[] = [additionalTraining];
