import { defineRule, type Citation } from '../../../../engine/rule.js';
import type { Parameters } from '../../../../engine/parameters.js';
import { need } from '../../../../engine/unknown.js';
import type { AircraftType } from '../../../../facts/aircraft.js';
import type { EndorsementKind } from '../../../../facts/person.js';
import { countedEndorsement, endorsementFor, getEndorsement } from '../../../common/people/endorsements.js';

/** Does the aircraft call for the training? `missing` says which fact of it is not on record. */
export type Call = boolean | { missing: string };

/** One of the additional trainings of 14 CFR 61.31(e) to (i). */
export interface AdditionalTraining {
  id: string;
  title: string;
  /** 'a complex airplane' */
  what: string;
  citation: Citation;
  kind: EndorsementKind;
  grandfather: EndorsementKind;
  /** Parameter with the date before which pilot-in-command time stands for the endorsement. */
  before: string;
  parameters: readonly string[];
  calls(type: AircraftType, p: Parameters): Call;
}

/**
 * The shape all four share: training and a one-time endorsement, unless the person was pilot in command of such an
 * aircraft before the requirement. It binds the pilot in command, not a learner under instruction.
 */
export function additionalTrainingRule(of: AdditionalTraining) {
  return defineRule({
    id: of.id,
    title: of.title,
    weight: 'law',
    binds: 'pilot',
    reads: ['pic.endorsements', 'aircraft.type'],
    parameters: [of.before, ...of.parameters],
    branches: {
      'not-needed': { status: 'not-applicable', says: `This aircraft is not ${of.what}.` },
      endorsed: { status: 'met', says: `The pilot in command is endorsed for ${of.what}, on {on}.` },
      grandfathered: {
        status: 'met',
        says: `The pilot in command flew ${of.what} as such on {on}, before {before}, so no endorsement is needed.`,
      },
      missing: {
        status: 'short',
        says: `This is ${of.what}; the pilot in command has no endorsement for one on record.`,
      },
    },
    bodies: [
      {
        version: 1,
        from: null,
        to: null,
        citation: of.citation,
        judge(f, moment, p, take) {
          const call = of.calls(f.get('aircraft.type'), p);
          if (call === false) return take('not-needed');
          const endorsements = f.get('pic.endorsements');
          const endorsement = endorsementFor(endorsements, moment, { kind: of.kind });
          if (endorsement) {
            const counted = [countedEndorsement(endorsement, 'endorsement')];
            return take('endorsed', { on: endorsement.on }, { counted });
          }
          const before = p.text(of.before);
          const early = endorsementFor(
            endorsements.filter((one) => one.on < before),
            moment,
            { kind: of.grandfather },
          );
          if (early) {
            const counted = [countedEndorsement(early, 'pilot in command')];
            return take('grandfathered', { on: early.on, before }, { counted });
          }
          if (call !== true) need(null, 'aircraft.type', call.missing);
          const title = `Train with an instructor in ${of.what} and be endorsed.`;
          return take('missing', {}, { remedies: () => getEndorsement(moment, { kind: of.kind }, title) });
        },
      },
    ],
  });
}
