/**
 * Items most clubs of a jurisdiction ask for, ready to be put on an aircraft. Intervals of law are those the rules ask by; the others
 * are common practice, no source, for the club to change in a template of its own.
 */
import type { EquipmentKind, ItemFact, ItemKind } from '../../../rules/index.js';

/** A template without a row. */
export interface BuiltIn {
  /** 'us.annual': never changes. */
  code: string;
  kind: Exclude<ItemKind, 'directive'>;
  title: string;
  reference: string;
  scope: ItemFact['scope'];
  calendarMonths?: number;
  days?: number;
  intervalH?: number;
  toleranceH?: number;
  recurring?: boolean;
  hangsOn?: EquipmentKind;
}

const PRACTICE = 'common practice, no source';

const EVERYWHERE: Omit<BuiltIn, 'code'>[] = [
  {
    kind: 'club',
    title: 'Oil and filter',
    reference: PRACTICE,
    scope: 'all',
    intervalH: 50,
    calendarMonths: 4,
  },
  {
    kind: 'club',
    title: 'Magnetos, 500-hour inspection',
    reference: PRACTICE,
    scope: 'advice',
    intervalH: 500,
  },
  {
    kind: 'club',
    title: 'Engine overhaul',
    reference: 'As the maker recommends; common practice, no source',
    scope: 'advice',
    intervalH: 2000,
    calendarMonths: 144,
  },
  {
    kind: 'club',
    title: 'Propeller overhaul',
    reference: 'As the maker recommends; common practice, no source',
    scope: 'advice',
    intervalH: 2000,
    calendarMonths: 72,
  },
  {
    kind: 'club',
    title: 'Air pump replacement',
    reference: PRACTICE,
    scope: 'advice',
    intervalH: 500,
    hangsOn: 'air-pump',
  },
  {
    kind: 'club',
    title: 'Backup battery check',
    reference: PRACTICE,
    scope: 'ifr',
    calendarMonths: 12,
    hangsOn: 'backup-battery',
  },
  {
    kind: 'club',
    title: 'Navigation database',
    reference: 'Cycle of 28 days, ICAO annex 15; from memory',
    scope: 'ifr',
    days: 28,
    hangsOn: 'gps-navigator',
  },
  { kind: 'club', title: 'Fire extinguisher', reference: PRACTICE, scope: 'advice', calendarMonths: 12 },
  { kind: 'club', title: 'Weighing', reference: PRACTICE, scope: 'advice', calendarMonths: 60 },
];

const US: Omit<BuiltIn, 'code'>[] = [
  {
    kind: 'annual',
    title: 'Annual inspection',
    reference: '14 CFR 91.409(a)',
    scope: 'all',
    calendarMonths: 12,
  },
  {
    kind: 'hours-100',
    title: '100-hour inspection',
    reference: '14 CFR 91.409(b)',
    scope: 'hire-or-instruction',
    intervalH: 100,
    toleranceH: 10,
  },
  {
    kind: 'progressive',
    title: 'Progressive programme: complete inspection',
    reference: '14 CFR 91.409(d)',
    scope: 'all',
    calendarMonths: 12,
  },
  {
    kind: 'altimeter-static',
    title: 'Altimeter, static system and altitude reporting',
    reference: '14 CFR 91.411',
    scope: 'ifr',
    calendarMonths: 24,
  },
  {
    kind: 'transponder',
    title: 'Transponder',
    reference: '14 CFR 91.413',
    scope: 'transponder-use',
    calendarMonths: 24,
    hangsOn: 'transponder',
  },
  {
    kind: 'elt-inspection',
    title: 'ELT inspection',
    reference: '14 CFR 91.207(d)',
    scope: 'all',
    calendarMonths: 12,
    hangsOn: 'elt',
  },
  {
    kind: 'elt-battery',
    title: 'ELT battery',
    reference: '14 CFR 91.207(c)',
    scope: 'all',
    recurring: false,
    hangsOn: 'elt',
  },
  {
    kind: 'vor-check',
    title: 'VOR check',
    reference: '14 CFR 91.171',
    scope: 'ifr',
    days: 30,
    hangsOn: 'vor-receiver',
  },
];

const EU: Omit<BuiltIn, 'code'>[] = [
  {
    kind: 'club',
    title: 'Airworthiness review certificate',
    reference: 'Regulation (EU) No 1321/2014, ML.A.901; from memory',
    scope: 'all',
    calendarMonths: 12,
  },
  {
    kind: 'annual',
    title: 'Annual or 100-hour inspection',
    reference: 'Regulation (EU) No 1321/2014, ML.A.302(d); from memory',
    scope: 'all',
    calendarMonths: 12,
    intervalH: 100,
    toleranceH: 10,
  },
  {
    kind: 'elt-battery',
    title: 'ELT battery',
    reference: PRACTICE,
    scope: 'all',
    recurring: false,
    hangsOn: 'elt',
  },
];

const CA: Omit<BuiltIn, 'code'>[] = [
  {
    kind: 'annual',
    title: 'Annual inspection',
    reference: 'CARs standard 625, appendix B; from memory',
    scope: 'all',
    calendarMonths: 12,
  },
  {
    kind: 'altimeter-static',
    title: 'Altimeter and static system',
    reference: 'CARs standard 625, appendix C; from memory',
    scope: 'ifr',
    calendarMonths: 24,
  },
  {
    kind: 'transponder',
    title: 'Transponder',
    reference: 'CARs standard 625, appendix C; from memory',
    scope: 'transponder-use',
    calendarMonths: 24,
    hangsOn: 'transponder',
  },
  {
    kind: 'elt-inspection',
    title: 'ELT',
    reference: 'CARs standard 625, appendix C; from memory',
    scope: 'all',
    calendarMonths: 12,
    hangsOn: 'elt',
  },
  {
    kind: 'club',
    title: 'Compass swing',
    reference: 'CARs standard 625, appendix C; from memory',
    scope: 'all',
    calendarMonths: 12,
  },
];

const coded = (prefix: string, all: Omit<BuiltIn, 'code'>[]): BuiltIn[] =>
  all.map((one) => ({ code: `${prefix}.${one.title.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-')}`, ...one }));

const BY_JURISDICTION: Record<string, BuiltIn[]> = {
  US: [...coded('us', US), ...coded('any', EVERYWHERE)],
  EU: [...coded('eu', EU), ...coded('any', EVERYWHERE)],
  CA: [...coded('ca', CA), ...coded('any', EVERYWHERE)],
};

/** Those of a jurisdiction; the ones of no country alone where it is unknown. */
export const builtInTemplates = (jurisdiction: string): BuiltIn[] =>
  BY_JURISDICTION[jurisdiction] ?? coded('any', EVERYWHERE);
