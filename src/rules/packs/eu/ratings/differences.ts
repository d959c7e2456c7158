import { defineRule } from '../../../engine/rule.js';
import type { AircraftType } from '../../../facts/aircraft.js';
import type { EndorsementKind } from '../../../facts/person.js';
import { countedEndorsement, endorsed, endorsementFor } from '../../common/people/endorsements.js';
import { canStillAct } from '../../common/people/plans.js';
import { isSingleEngine, ratingFor } from './class-of.js';

interface Variant {
  kind: EndorsementKind;
  words: string;
  has: (type: AircraftType) => boolean;
}

/** The variants within a single-engine piston class that the aircraft's record shows. */
const VARIANTS: readonly Variant[] = [
  {
    kind: 'differences-variable-pitch',
    words: 'variable pitch propeller',
    has: (type) => type.controllablePropeller,
  },
  {
    kind: 'differences-retractable-gear',
    words: 'retractable undercarriage',
    has: (type) => type.retractableGear,
  },
  { kind: 'differences-tailwheel', words: 'tailwheel', has: (type) => type.tailwheel },
  { kind: 'differences-pressurised', words: 'cabin pressurisation', has: (type) => type.pressurised },
];

/**
 * Part-FCL, FCL.710 and FCL.135.A(b): differences training, signed by an instructor, for each variant of aeroplane within
 * a class. What the aircraft's record does not show (turbocharger, electronic displays, single power lever) is a condition.
 */
export const differences = defineRule({
  id: 'rating.easa.differences',
  title: 'Differences training',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.endorsements', 'aircraft.type'],
  parameters: [],
  branches: {
    'by-type': {
      status: 'not-applicable',
      says: 'The aircraft is flown on a rating of its own type; its variants are not judged here.',
    },
    trained: { status: 'met', says: 'Differences training on record: {variants}.' },
    'none-shown': {
      status: 'met',
      says: 'The record of the aircraft shows no variant that asks for differences training.',
    },
    missing: { status: 'short', says: 'No differences training on record for: {variants}.' },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Regulation (EU) No 1178/2011, FCL.710, FCL.135.A(b); GM1 FCL.710',
        status: 'from memory',
        reading:
          'Training once signed is taken to last (the two years of FCL.710(b) are for type ratings and multi-engine classes, which stay a condition). The variant flown in the skill test needs a signed entry like the others (strict).',
      },
      judge(f, moment, _p, take) {
        const type = f.get('aircraft.type');
        const wanted = ratingFor(type);
        if (!wanted || wanted.kind === 'type') return take('by-type');
        const conditions = [
          isSingleEngine(wanted)
            ? 'Make sure that you have trained for what this aircraft has of these: turbocharger, electronic displays, single power lever.'
            : 'Make sure that you have had the differences training for this type of multi-engine aeroplane, and have flown it since within two years.',
        ];
        const endorsements = f.get('pic.endorsements');
        const needed = VARIANTS.filter(({ has }) => has(type)).map((variant) => ({
          ...variant,
          by: endorsementFor(endorsements, moment, { kind: variant.kind }),
        }));
        const lacking = needed.filter(({ by }) => by === null);
        const words = (list: readonly Variant[]) => list.map((one) => one.words).join(', ');
        if (lacking.length > 0)
          return take(
            'missing',
            { variants: words(lacking) },
            {
              remedies: () =>
                canStillAct(moment)
                  ? [
                      {
                        act: 'train-differences',
                        title: `Train the differences with an instructor and have them signed: ${words(lacking)}.`,
                        by: 'instructor',
                        effects: lacking.map(({ kind }) => endorsed(moment, { kind })),
                      },
                    ]
                  : [],
            },
          );
        if (needed.length === 0) return take('none-shown', {}, { conditions });
        const counted = needed.map(({ by, words: what }) => countedEndorsement(by!, what));
        return take('trained', { variants: words(needed) }, { counted, conditions });
      },
    },
  ],
});
