import { defineRule } from '../../../engine/rule.js';
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
    'not-asked': { status: 'not-applicable', says: 'The endorsement is asked of powered aircraft only.' },
    valid: { status: 'met', says: 'Language proficiency in {languages} is endorsed{through}.' },
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
        if (category === 'lighter-than-air' || (category === 'glider' && engines === 0))
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
        const languages = [...new Set(valid.map(({ designator }) => designator ?? 'an unnamed language'))];
        const english = languages.some((one) => /^english$/i.test(one));
        const lasting = valid.some(({ validThrough }) => validThrough === null);
        const last = valid
          .map(({ validThrough }) => validThrough ?? '')
          .sort()
          .at(-1)!;
        return take(
          'valid',
          { languages: languages.join(', '), through: lasting ? '' : ` through ${last}` },
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
