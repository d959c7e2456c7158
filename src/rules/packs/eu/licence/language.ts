import { defineRule } from '../../../engine/rule.js';
import type { RatingFact } from '../../../facts/person.js';
import { canStillAct } from '../../common/people/plans.js';

/**
 * Part-FCL, FCL.055: pilots of aeroplanes and helicopters who use the radio have a language proficiency endorsement in
 * English or in the language used for radio communication on the flight.
 */
export const language = defineRule({
  id: 'language.easa.proficiency',
  title: 'Language proficiency',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.ratings', 'aircraft.type'],
  parameters: [],
  branches: {
    'not-asked': {
      status: 'not-applicable',
      says: 'A language endorsement is asked of powered aircraft only.',
    },
    valid: { status: 'met', says: 'Language proficiency is endorsed in {languages}.' },
    none: {
      status: 'short',
      says: 'No language proficiency endorsement on record is valid for this flight.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Regulation (EU) No 1178/2011, FCL.055(a), (c)',
        status: 'seen',
        reading:
          'Every flight is taken to use the radio (strict). That the language is the one used on the radio of this flight is ' +
          'a condition where English is not endorsed. The day the endorsement ends is the one written in the licence.',
      },
      judge(f, moment, _p, take) {
        const { category, engines } = f.get('aircraft.type');
        if ((category === 'lighter-than-air' || category === 'glider') && engines === 0)
          return take('not-asked');
        const valid = f
          .get('pic.ratings')
          .filter(({ kind, on }) => kind === 'language' && moment.startsOnOrAfter(on))
          .filter(({ validThrough }) => validThrough === null || moment.endsOnOrBefore(validThrough))
          .sort((a, b) => (`${a.designator} ${a.id}` < `${b.designator} ${b.id}` ? -1 : 1));
        if (valid.length === 0)
          return take(
            'none',
            {},
            {
              remedies: () =>
                canStillAct(moment)
                  ? [
                      {
                        act: 'pass-language-assessment',
                        title: 'Pass a language proficiency assessment and have it endorsed.',
                        by: 'examiner',
                        effects: [
                          {
                            op: 'append',
                            fact: 'pic.ratings',
                            value: {
                              id: 'planned:pass-language-assessment',
                              kind: 'language',
                              designator: 'English',
                              on: moment.knowledgeDate(),
                              validThrough: null,
                            },
                          },
                        ],
                      },
                    ]
                  : [],
            },
          );
        const languages = [...new Set(valid.map(languageOf))];
        const english = languages.some((one) => /^english$/i.test(one));
        const words = languages.map(
          (one) => `${one}${endWords(valid.filter((of) => languageOf(of) === one))}`,
        );
        return take(
          'valid',
          { languages: words.join(', ') },
          {
            counted: valid.map(({ id, on, designator }) => ({ id, on, what: designator ?? 'language' })),
            conditions: english
              ? []
              : [`Make sure that the radio of this flight is spoken in: ${languages.join(', ')}.`],
          },
        );
      },
    },
  ],
});

const languageOf = ({ designator }: RatingFact): string => designator ?? 'an unnamed language';

/** ' through 2027-05-31', of several endorsements of a language the last end; empty where one does not end. */
function endWords(endorsements: readonly RatingFact[]): string {
  const ends = endorsements.flatMap(({ validThrough }) => validThrough ?? []).sort();
  return ends.length < endorsements.length ? '' : ` through ${ends.at(-1)!}`;
}
