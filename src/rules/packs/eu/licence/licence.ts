import { defineRule } from '../../../engine/rule.js';
import { need } from '../../../engine/unknown.js';
import { flyAlone } from '../../leave-passengers.js';
import { canStillAct } from '../../common/people/plans.js';
import { lastEnd, spanWords, validThroughWords } from '../../common/people/standing.js';
import { EU_LEVEL_WORDS, euStanding, flownOn, licenceCategory } from './standing.js';

/**
 * Part-FCL, FCL.015 and FCL.040: the pilot in command holds a licence for the category of aircraft. A student flies
 * alone, as authorised and supervised by an instructor (FCL.020).
 */
export const licence = defineRule({
  id: 'certificate.easa.licence',
  title: 'Pilot licence',
  weight: 'law',
  binds: 'pilot',
  reads: ['pic.certificates', 'aircraft.type'],
  parameters: [],
  branches: {
    held: {
      status: 'met',
      says: 'The pilot in command holds a {level} for the category {category}{through}.',
    },
    'student-alone': { status: 'met', says: 'A student flies alone under an instructor’s supervision.' },
    'student-not-alone': {
      status: 'short',
      says: 'A student may fly as pilot in command only when alone aboard; {aboard} are planned.',
    },
    suspended: {
      status: 'short',
      says: 'The licence is suspended {span}; only the end of the suspension opens this flight.',
    },
    ended: { status: 'short', says: 'The licence for the category {category} ended on {endedOn}.' },
    none: {
      status: 'short',
      says: 'No pilot licence for the category {category} in force on the day of the flight is on record.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Regulation (EU) No 1178/2011, FCL.015(c), FCL.020, FCL.040',
        status: 'seen',
        reading:
          'The club records licences issued or converted under Part-FCL as student, lapl, private, commercial and atp. A ' +
          'glider with an engine is taken for a touring motor glider. Sailplanes and balloons (Part-SFCL, Part-BFCL) are ' +
          'not held. A suspension stops every licence of the person.',
      },
      judge(f, moment, _p, take) {
        const type = f.get('aircraft.type');
        const category = need(
          licenceCategory(type),
          'aircraft.type',
          `the law about licences for the category ${type.category} is not held here`,
        );
        const standing = euStanding(f.get('pic.certificates'), moment);
        if (standing.suspended) return take('suspended', { span: spanWords(standing.suspended) });
        const held = flownOn(standing, type);
        if (!held) {
          const ended = standing.ended.filter(({ ratings }) =>
            ratings.some((one) => one.category === category),
          );
          const last = ended[0];
          if (!last) return take('none', { category });
          const renewed = () => ({
            ...last,
            id: 'planned:renew-certificate',
            issuedOn: moment.knowledgeDate(),
            validThrough: null,
          });
          return take(
            'ended',
            { category, endedOn: lastEnd(ended) },
            {
              remedies: () =>
                canStillAct(moment)
                  ? [
                      {
                        act: 'renew-certificate',
                        title: 'Have the licence renewed and show it to the club.',
                        by: 'member',
                        effects: [{ op: 'append', fact: 'pic.certificates', value: renewed() }],
                      },
                    ]
                  : [],
            },
          );
        }
        const counted = [{ id: held.id, on: held.issuedOn, what: EU_LEVEL_WORDS[held.level]! }];
        if (held.level !== 'student')
          return take(
            'held',
            { level: EU_LEVEL_WORDS[held.level]!, category, through: validThroughWords(held) },
            { counted },
          );
        if (!f.crew.alone)
          return take(
            'student-not-alone',
            { aboard: f.flight.personsOnBoard },
            { remedies: () => flyAlone(f) },
          );
        return take(
          'student-alone',
          {},
          {
            counted,
            conditions: ['Fly only as a flight instructor authorised and supervises it (FCL.020).'],
          },
        );
      },
    },
  ],
});
