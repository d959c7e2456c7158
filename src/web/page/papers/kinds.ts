import type { Paper } from './types.js';

/** A field of the form that enters a paper. */
export interface Field {
  name: string;
  label: string;
  type: 'day' | 'hours' | 'words' | 'text' | 'choice' | 'number' | 'tick' | 'ticks';
  choices?: [value: string, label: string][];
  required?: boolean;
}

/** A kind of paper: its list, what the form asks, and how one line names it. */
export interface Kind {
  path: string;
  title: string;
  fields: Field[];
  names(paper: Paper): string;
}

const said = (value: unknown): string => String(value ?? '').replaceAll('-', ' ');
const day = (name: string, label: string, required = false): Field => ({
  name,
  label,
  type: 'day',
  required,
});
const choice = (name: string, label: string, values: string[]): Field => ({
  ...{ name, label, type: 'choice', required: true },
  choices: values.map((value) => [value, said(value)]),
});
const ticks = (name: string, label: string, values: [value: string, label: string][]): Field => ({
  ...{ name, label, type: 'ticks', choices: values },
});
/** Category and class of a rating, as the list of a certificate's ratings takes them. */
const RATINGS = ticks('ratings', 'Ratings on it', [
  ['airplane single-engine-land', 'airplane, single-engine land'],
  ['airplane single-engine-sea', 'airplane, single-engine sea'],
  ['airplane multi-engine-land', 'airplane, multi-engine land'],
  ['airplane multi-engine-sea', 'airplane, multi-engine sea'],
  ['rotorcraft helicopter', 'helicopter'],
  ['rotorcraft gyroplane', 'gyroplane'],
  ['glider none', 'glider'],
]);
const LIMITS: Field = { name: 'limitations', label: 'Limitations as printed, one a line', type: 'words' };

export const KINDS: Kind[] = [
  {
    path: 'certificates',
    title: 'Pilot certificates',
    fields: [
      choice('level', 'Level', ['student', 'sport', 'recreational', 'lapl', 'private', 'commercial', 'atp']),
      day('issuedOn', 'Issued on', true),
      day('validThrough', 'Valid through, if it says so'),
      RATINGS,
      ticks('instrument', 'Instrument rating', [['airplane', 'airplane']]),
      LIMITS,
    ],
    names: ({ level, issuedOn }) => `${said(level)} certificate of ${said(issuedOn).replaceAll(' ', '-')}`,
  },
  {
    path: 'medicals',
    title: 'Medical certificates',
    fields: [
      {
        ...{ name: 'class', label: 'Class', type: 'number', required: true },
        choices: ['1', '2', '3', '4'].map((value) => [value, value]),
      },
      day('examOn', 'Examined on', true),
      LIMITS,
    ],
    names: (paper) => `Class ${paper['class'] as number}, examined ${paper['examOn'] as string}`,
  },
  {
    path: 'basic-med',
    title: 'BasicMed',
    fields: [
      day('examOn', 'Examination on'),
      day('courseOn', 'Course on'),
      day('licenceValidThrough', "Driver's licence valid through"),
      { name: 'heldMedicalAfter20060714', label: 'Held a medical after 14 July 2006', type: 'tick' },
    ],
    names: ({ examOn, courseOn }) =>
      `Examination ${(examOn as string) ?? 'not entered'}, course ${(courseOn as string) ?? 'not entered'}`,
  },
  {
    path: 'reviews',
    title: 'Flight reviews and checks',
    fields: [
      choice('kind', 'Kind', [
        ...['flight-review', 'practical-test', 'proficiency-check', 'instrument-proficiency-check'],
        ...['faa-proficiency-phase', 'instructor-practical-test', 'instructor-renewal', 'safety-seminar'],
        ...['self-paced-study', 'written-examination'],
      ]),
      day('reviewedOn', 'On', true),
      { name: 'groundH', label: 'Ground training (h)', type: 'hours' },
      { name: 'flightH', label: 'Flight training (h)', type: 'hours' },
    ],
    names: ({ kind, reviewedOn }) => `${said(kind)} of ${reviewedOn as string}`,
  },
  {
    path: 'endorsements',
    title: 'Endorsements',
    fields: [
      choice('kind', 'Kind', [
        ...['complex', 'high-performance', 'high-altitude', 'tailwheel', 'solo', 'solo-night'],
        ...['solo-cross-country-training', 'solo-cross-country-flight', 'solo-other-airport-25nm'],
      ]),
      day('endorsedOn', 'Given on', true),
      day('expiresOn', 'Valid through, if it says so'),
    ],
    names: ({ kind, endorsedOn }) => `${said(kind)} of ${endorsedOn as string}`,
  },
  {
    path: 'instructor-certificates',
    title: 'Instructor certificates',
    fields: [
      day('issuedOn', 'Issued on', true),
      ticks(
        'ratings',
        'Ratings on it',
        [
          'airplane-single-engine',
          'airplane-multiengine',
          'instrument-airplane',
          'rotorcraft-helicopter',
          'glider',
        ].map((value) => [value, said(value)]),
      ),
      day('recentExperienceOn', 'Newest recent experience on'),
      day('printedEndOn', 'End date, if one is printed'),
    ],
    names: ({ issuedOn }) => `Issued ${issuedOn as string}`,
  },
  {
    path: 'ratings',
    title: 'Ratings that end',
    fields: [
      choice('kind', 'Kind', [
        ...['single-engine-piston-land', 'single-engine-piston-sea', 'multi-engine-piston-land'],
        ...['multi-engine-piston-sea', 'touring-motor-glider', 'type', 'instrument', 'night', 'language'],
      ]),
      { name: 'designator', label: 'Which type, or which language', type: 'text' },
      day('issuedOn', 'Issued on', true),
      day('validThrough', 'Valid through'),
    ],
    names: ({ kind, designator }) => `${said(kind)} ${(designator as string) ?? ''}`,
  },
];
