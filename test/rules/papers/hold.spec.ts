/**
 * Until when papers hold and for what. Days are worked out by hand from the sections named: 14 CFR as published, Part-MED and
 * the CARs from memory. A last test asks the rules themselves on that day and the next.
 */
import { addDays, judge, papersHold, startingPolicy, type PersonFacts } from '../../../src/rules/index.js';
import { known, unknownFact } from '../../../src/rules/facts/fact.js';
import type { MedicalFact } from '../../../src/rules/facts/person.js';
import { baseSheet } from '../../../src/rules/workshop/base-sheet.js';
import {
  BASIC_MED,
  CERTIFICATE,
  ENDORSEMENT,
  INSTRUCTOR,
  LICENCE_RATING,
  MEDICAL,
  REVIEW,
} from '../../../src/rules/workshop/records.js';

const AT = '2027-03-01T18:00:00Z';
const pilot = (more: Partial<PersonFacts>): PersonFacts => ({ ...baseSheet().people['member-1']!, ...more });
type Held = [purpose: string, through: string | null, note?: string];
/** What one paper is good for. */
function holdsOf(id: string, more: Partial<PersonFacts>, jurisdiction: 'US' | 'EU' | 'CA' = 'US'): Held[] {
  const all = papersHold(pilot(more), { jurisdiction, zone: 'America/Denver', at: AT });
  const found = all.find(({ paperId }) => paperId === id)?.holds ?? [];
  return found.map(({ purpose, through, note }) =>
    note === null ? [purpose, through] : [purpose, through, note],
  );
}
const medical = (one: Partial<MedicalFact>): Partial<PersonFacts> => ({
  medicals: known([{ ...MEDICAL, ...one }], AT),
});
const ATP = 'airline transport privileges';
const HIRE = 'commercial privileges';
const OWN = 'private, recreational, student or instructor privileges';

describe('medical certificates, 14 CFR 61.23(d)', () => {
  // Born on 1990-06-01: 36 on the day of the examination.
  test.each<[string, Partial<MedicalFact>, string, Held[]]>([
    [
      'first class, under 40',
      { class: 1, examOn: '2027-01-15' },
      '1990-06-01',
      [
        [ATP, '2028-01-31'],
        [HIRE, '2028-01-31'],
        [OWN, '2032-01-31'],
      ],
    ],
    [
      'first class on the 40th birthday',
      { class: 1, examOn: '2027-01-15' },
      '1987-01-15',
      [
        [ATP, '2027-07-31'],
        [HIRE, '2028-01-31'],
        [OWN, '2029-01-31'],
      ],
    ],
    [
      'first class the day before it',
      { class: 1, examOn: '2027-01-14' },
      '1987-01-15',
      [
        [ATP, '2028-01-31'],
        [HIRE, '2028-01-31'],
        [OWN, '2032-01-31'],
      ],
    ],
    [
      'second class, over 40',
      { class: 2, examOn: '2026-02-10' },
      '1970-01-01',
      [
        [HIRE, '2027-02-28'],
        [OWN, '2028-02-29'],
      ],
    ],
    ['third class, under 40', { class: 3, examOn: '2026-03-31' }, '1990-06-01', [[OWN, '2031-03-31']]],
    ['third class, over 40', { class: 3, examOn: '2026-03-01' }, '1970-01-01', [[OWN, '2028-03-31']]],
  ])('%s', (_name, one, born, expected) => {
    expect(holdsOf('medical-1', { ...medical(one), birthDate: known(born, AT) })).toEqual(expected);
  });

  test('a withdrawal ends it the day before, and says so', () => {
    expect(
      holdsOf('medical-1', medical({ class: 2, examOn: '2026-06-10', withdrawnOn: '2026-12-24' })),
    ).toEqual([
      [HIRE, '2026-12-23', 'A certificate was withdrawn on 2026-12-24.'],
      [OWN, '2026-12-23', 'A certificate was withdrawn on 2026-12-24.'],
    ]);
  });

  test('a later one withdrawn ends it too; one of the day of the withdrawal and after stands', () => {
    const of = (examOn: string): Partial<PersonFacts> => ({
      medicals: known(
        [
          { ...MEDICAL, examOn },
          { ...MEDICAL, id: 'medical-2', examOn: '2026-02-01', withdrawnOn: '2026-12-24' },
        ],
        AT,
      ),
    });
    expect(holdsOf('medical-1', of('2026-12-23'))[0]![1]).toBe('2026-12-23');
    expect(holdsOf('medical-1', of('2026-12-24'))).toEqual([[OWN, '2031-12-31']]);
  });

  test('one withdrawn on the day it was given never held', () => {
    expect(
      holdsOf('medical-1', medical({ examOn: '2026-12-24', withdrawnOn: '2026-12-24' })).map(([, on]) => on),
    ).toEqual(['2026-12-23']);
  });

  test('of several withdrawals the first counts; on its last day one still cuts a day off', () => {
    const all = [
      { ...MEDICAL, examOn: '2026-01-15' },
      { ...MEDICAL, id: 'medical-2', examOn: '2026-01-20', withdrawnOn: '2026-12-24' },
      { ...MEDICAL, id: 'medical-3', examOn: '2026-01-25', withdrawnOn: '2026-06-01' },
    ];
    expect(holdsOf('medical-1', { medicals: known(all, AT) })[0]![1]).toBe('2026-05-31');
    expect(holdsOf('medical-1', medical({ examOn: '2026-03-15', withdrawnOn: '2031-03-31' }))).toEqual([
      [OWN, '2031-03-30', 'A certificate was withdrawn on 2031-03-31.'],
    ]);
  });

  test('one that ran out before the withdrawal ended when it ran out', () => {
    expect(holdsOf('medical-1', medical({ examOn: '2010-06-10', withdrawnOn: '2026-12-24' }))).toEqual([
      [OWN, '2015-06-30'],
    ]);
  });

  test('without a birth date nothing is told', () => {
    const held = holdsOf('medical-1', { ...medical({}), birthDate: unknownFact('not on record') });
    expect(held).toEqual([['all privileges', null, 'It hangs on the birth date, which is not on record.']]);
  });
});

describe('other papers of 14 CFR', () => {
  test('BasicMed: the examination 48 months, the course 24 calendar months, the licence; the first of them (61.23(c)(3), 68)', () => {
    // Examined 2024-06-10, course 2025-08-01, licence through 2030-01-01.
    expect(holdsOf('basicmed-1', { basicMed: known([BASIC_MED], AT) })).toEqual([
      ['flying on BasicMed', '2027-08-31'],
      ['physician’s examination', '2028-06-30'],
      ['medical education course', '2027-08-31'],
      ['driver’s licence', '2030-01-01'],
    ]);
    const bare = { ...BASIC_MED, courseOn: null, licenceValidThrough: null };
    expect(holdsOf('basicmed-1', { basicMed: known([bare], AT) })).toEqual([
      ['flying on BasicMed', null, 'Not on record: medical education course, driver’s licence.'],
      ['physician’s examination', '2028-06-30'],
    ]);
    const unexamined = { ...BASIC_MED, examOn: null };
    expect(holdsOf('basicmed-1', { basicMed: known([unexamined], AT) })).toEqual([
      ['flying on BasicMed', null, 'Not on record: physician’s examination.'],
      ['medical education course', '2027-08-31'],
      ['driver’s licence', '2030-01-01'],
    ]);
  });

  const reviewed = (more: object): Held[] =>
    holdsOf('review-1', { reviews: known([{ ...REVIEW, on: '2026-01-10', ...more }], AT) });
  const PIC = 'acting as pilot in command (flight review)';
  test.each<[string, object, Held]>([
    ['a flight review: 24 calendar months (61.56(c))', {}, [PIC, '2028-01-31']],
    [
      'a practical test stands for one (61.56(d))',
      { kind: 'practical-test', groundTenths: null },
      [PIC, '2028-01-31'],
    ],
    ['its hours are not known', { flightTenths: null }, [PIC, null, 'Its hours are not on record.']],
    [
      'it was too short',
      { flightTenths: 9 },
      [PIC, null, 'It does not stand for a flight review by itself.'],
    ],
    ['an hour of flight is enough (61.56(a))', { flightTenths: 10 }, [PIC, '2028-01-31']],
    [
      'the hour on the ground was too short',
      { groundTenths: 9 },
      [PIC, null, 'It does not stand for a flight review by itself.'],
    ],
    [
      'a seminar is none',
      { kind: 'safety-seminar' },
      [PIC, null, 'It does not stand for a flight review by itself.'],
    ],
  ])('%s', (_name, more, expected) => {
    expect(reviewed(more)).toEqual([expected]);
  });

  test('instructor: 24 calendar months from the recent experience, never past a printed end (61.197)', () => {
    const of = (more: object) =>
      holdsOf(INSTRUCTOR.id, { instructor: known([{ ...INSTRUCTOR, ...more }], AT) });
    expect(of({ recentExperienceOn: '2026-06-10' })).toEqual([['giving instruction', '2028-06-30']]);
    expect(of({ printedEndOn: '2027-11-30' })).toEqual([['giving instruction', '2027-11-30']]);
    expect(of({ recentExperienceOn: null })).toEqual([
      ['giving instruction', null, 'When the recent experience was last met is not on record.'],
    ]);
  });

  test('endorsements: solo for 90 days (61.87(n)), others until what is printed', () => {
    const of = (more: object) =>
      holdsOf('endorsement-1', { endorsements: known([{ ...ENDORSEMENT, ...more }], AT) });
    expect(of({ kind: 'solo', on: '2027-01-10', makeModel: 'Harrow Lark 160' })).toEqual([
      ['solo in the Harrow Lark 160', '2027-04-10'],
    ]);
    expect(of({ kind: 'solo-night', on: '2027-01-10', expiresOn: '2027-02-10' })).toEqual([
      ['solo night', '2027-02-10'],
    ]);
    expect(of({ kind: 'solo-night', on: '2027-01-10' })).toEqual([['solo night', '2027-04-10']]);
    expect(of({ kind: 'solo', on: '2027-01-10', expiresOn: '2027-12-31' })).toEqual([['solo', '2027-04-10']]);
    expect(of({ kind: 'tailwheel' })).toEqual([['tailwheel', null, 'It names no end.']]);
  });

  test('certificates and ratings: what is printed', () => {
    expect(holdsOf('certificate-1', {})).toEqual([['private pilot privileges', null, 'It names no end.']]);
    const ending = known([{ ...CERTIFICATE, validThrough: '2027-05-31' }], AT);
    expect(holdsOf('certificate-1', { certificates: ending })).toEqual([
      ['private pilot privileges', '2027-05-31'],
    ]);
    expect(holdsOf('rating-1', { ratings: known([LICENCE_RATING], AT) })).toEqual([
      ['single engine piston land rating', '2028-03-31'],
    ]);
    const endless = known([{ ...LICENCE_RATING, validThrough: null }], AT);
    expect(holdsOf('rating-1', { ratings: endless })).toEqual([
      ['single engine piston land rating', null, 'It names no end.'],
    ]);
  });

  test('of papers that are not known, and of kinds that were never asked for, nothing is told', () => {
    const none = { certificates: unknownFact('not on record'), ratings: undefined, medicals: known([], AT) };
    const told = papersHold(pilot(none), { jurisdiction: 'US', zone: 'America/Denver', at: AT });
    const papers = told.map(({ paperId }) => paperId);
    expect(papers).not.toContain('certificate-1');
    expect(papers).toContain('review-1');
    expect(told.every(({ holds }) => holds.length > 0)).toBe(true);
  });
});

/** The day through which one holds that was given on the day another was withdrawn, or on the day after. */
const givenBesideWithdrawal = (examOn: string, jurisdiction: 'EU' | 'CA'): string | null => {
  const medicals = known(
    [
      { ...MEDICAL, class: 1, examOn } as const,
      { ...MEDICAL, id: 'medical-2', class: 2, examOn: '2026-02-01', withdrawnOn: '2026-12-24' } as const,
    ],
    AT,
  );
  return holdsOf('medical-1', { medicals }, jurisdiction)[0]![1];
};

test.each([
  ['EU', '2027-12-25'],
  ['CA', '2027-12-31'],
] as const)(
  '%s, strict reading: a withdrawal ends one given on its own day, and none of the day after',
  (of, end) => {
    expect(givenBesideWithdrawal('2026-12-24', of)).toBe('2026-12-23');
    expect(givenBesideWithdrawal('2026-12-25', of)).toBe(end);
  },
);

test('Part-MED, MED.A.045, from memory: class 1 twelve months, class 2 sixty under 40, ending with the 42nd birthday', () => {
  const held = holdsOf('medical-1', medical({ class: 1, examOn: '2027-01-15' }), 'EU');
  expect(held).toEqual([
    ['flying for hire', '2028-01-15'],
    ['flying on a private licence', '2032-01-15'],
    ['flying on a light aircraft licence', '2032-01-15'],
  ]);
  // Born on 1990-06-01, examined at 38: sixty months would be 2033, the day before the 42nd birthday is first.
  expect(holdsOf('medical-1', medical({ class: 2, examOn: '2028-07-01' }), 'EU')[0]).toEqual([
    'flying on a private licence',
    '2032-05-31',
  ]);
  // At 56 class 2 lasts twelve months, and for a light aircraft licence twenty-four.
  const older = { ...medical({ class: 2, examOn: '2027-01-15' }), birthDate: known('1970-06-01', AT) };
  expect(holdsOf('medical-1', older, 'EU')).toEqual([
    ['flying on a private licence', '2028-01-15'],
    ['flying on a light aircraft licence', '2029-01-15'],
  ]);
  const instructing = (printedEndOn: string | null): Held[] =>
    holdsOf('instructor-certificate-1', { instructor: known([{ ...INSTRUCTOR, printedEndOn }], AT) }, 'EU');
  expect(instructing(null)).toEqual([['giving instruction', null, 'Until when is not on record.']]);
  expect(instructing('2028-06-30')).toEqual([['giving instruction', '2028-06-30']]);
});

test('CARs 404.04 and 401.05, from memory: category 1, category 4, and recurrent training of twenty-four months', () => {
  const first = holdsOf('medical-1', medical({ class: 1, examOn: '2027-01-15' }), 'CA');
  expect(first.slice(0, 2)).toEqual([
    ['flying for hire', '2028-01-31'],
    ['flying on a private licence', '2032-01-31'],
  ]);
  const fourth = holdsOf('medical-1', medical({ class: 4, examOn: '2027-01-15' }), 'CA');
  expect(fourth.map(([purpose]) => purpose)).toEqual([
    'flying on a recreational permit',
    'flying on a student permit',
  ]);
  expect(holdsOf('review-1', { reviews: known([{ ...REVIEW, on: '2026-01-10' }], AT) }, 'CA')).toEqual([
    ['recurrent training', '2028-01-10'],
  ]);
  const check = { ...REVIEW, kind: 'faa-proficiency-phase' } as const;
  expect(holdsOf('review-1', { reviews: known([check], AT) }, 'CA')).toEqual([]);
  const same = medical({ class: 1, examOn: '2026-12-24', withdrawnOn: '2026-12-24' });
  expect(holdsOf('medical-1', same, 'CA')[0]![1]).toBe('2026-12-23');
});

test.each([
  ['medical.certificate', 'medical-1'],
  ['review.flight_24_months', 'review-1'],
])('%s comes out as told on the last day and the day after', (rule, paperId) => {
  const sheet = baseSheet();
  const all = papersHold(sheet.people['member-1']!, { jurisdiction: 'US', zone: sheet.zone, at: AT });
  const { holds } = all.find((one) => one.paperId === paperId)!;
  const last = holds.at(-1)!.through!;
  const statusOn = (day: string): string => {
    const flight = { ...sheet.flight, departs: `${day}T18:00:00Z`, arrives: `${day}T19:00:00Z` };
    const { findings } = judge({ ...sheet, flight }, startingPolicy());
    return findings.find((one) => one.rule === rule)!.status;
  };
  expect([statusOn(last), statusOn(addDays(last, 1))]).toEqual(['met', 'short']);
});
