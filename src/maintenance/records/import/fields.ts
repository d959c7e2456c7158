/** What an imported file may say, section by section, and by which headings. */
import {
  EQUIPMENT_KINDS,
  ITEM_KINDS,
  ITEM_SCOPES,
  METER_KINDS,
  VOR_METHODS,
} from '../../../fleet/vocabulary.js';
import { EQUIPMENT_BASES } from '../../../fleet/equipment/equipment.entity.js';

/** Sections of a file. What is in none of them is left out. */
export const SECTIONS = ['meter', 'equipment', 'weight', 'item', 'directive'] as const;
export type Section = (typeof SECTIONS)[number];

/** In what a figure may be given; the first is what is kept. Factors: the pound and the inch are exact (NIST SP 811, appendix B). */
export const UNITS = {
  hours: { h: 1, hr: 1, hrs: 1, hour: 1, hours: 1 },
  months: { months: 1, month: 1, mo: 1 },
  days: { days: 1, day: 1 },
  weight: { lb: 1, lbs: 1, pounds: 1, kg: 1 / 0.453_592_37 },
  arm: { in: 1, inch: 1, inches: 1, mm: 1 / 25.4, cm: 1 / 2.54, m: 100 / 2.54 },
} as const;
export type Dimension = keyof typeof UNITS;

/** One thing a row may say. */
export interface Field {
  /** Its heading in an exported file. */
  name: string;
  is: 'text' | 'day' | 'moment' | 'number' | 'whole' | 'flag' | 'word' | 'words';
  /** Other headings, in lower case, without unit. */
  also?: readonly string[];
  dimension?: Dimension;
  /** A heading without a unit is not enough: 'interval'. */
  needsUnit?: readonly string[];
  words?: readonly string[];
  /** Other words for the same. */
  spelt?: Readonly<Record<string, string>>;
  /** Worked out and not taken over. */
  computed?: boolean;
}

const ITEM_SPELT = {
  'annual-inspection': 'annual',
  '100-hour': 'hours-100',
  '100-hours': 'hours-100',
  '100-hr': 'hours-100',
  '100-h': 'hours-100',
  '100-hour-inspection': 'hours-100',
  'progressive-inspection': 'progressive',
  altimeter: 'altimeter-static',
  'pitot-static': 'altimeter-static',
  'altimeter-and-static-system': 'altimeter-static',
  'transponder-check': 'transponder',
  elt: 'elt-inspection',
  vor: 'vor-check',
  ad: 'directive',
  'airworthiness-directive': 'directive',
} as const;

const ITEM: readonly Field[] = [
  { name: 'kind', is: 'word', also: ['item kind', 'type'], words: ITEM_KINDS, spelt: ITEM_SPELT },
  { name: 'title', is: 'text', also: ['item', 'name', 'description', 'inspection', 'subject', 'directive'] },
  {
    name: 'reference',
    is: 'text',
    also: ['ref', 'ad number', 'ad no', 'ad', 'directive number', 'citation', 'regulation'],
  },
  { name: 'scope', is: 'word', also: ['binds', 'applies to'], words: ITEM_SCOPES },
  {
    name: 'calendar_months',
    is: 'whole',
    also: ['calendar interval', 'interval calendar', 'calendar'],
    dimension: 'months',
  },
  {
    name: 'months',
    is: 'whole',
    also: ['interval', 'every', 'plain'],
    dimension: 'months',
    needsUnit: ['interval', 'every', 'plain'],
  },
  {
    name: 'days',
    is: 'whole',
    also: ['interval', 'every'],
    dimension: 'days',
    needsUnit: ['interval', 'every'],
  },
  {
    name: 'interval_h',
    is: 'number',
    also: ['interval', 'every', 'hours interval'],
    dimension: 'hours',
    needsUnit: ['interval', 'every'],
  },
  { name: 'fixed_due_on', is: 'day', also: ['fixed due date', 'due on whatever was done'] },
  {
    name: 'fixed_due_h',
    is: 'number',
    also: ['fixed due', 'fixed due at'],
    dimension: 'hours',
    needsUnit: ['fixed due'],
  },
  { name: 'tolerance_h', is: 'number', also: ['tolerance'], dimension: 'hours' },
  { name: 'recurring', is: 'flag', also: ['repeats', 'recurs'] },
  { name: 'ferry_prohibited', is: 'flag', also: ['ferry forbidden'] },
  { name: 'since', is: 'day', also: ['asked for since', 'begins on'] },
  { name: 'retired_on', is: 'day', also: ['ends on'] },
  { name: 'equipment', is: 'text', also: ['on equipment', 'hangs on'] },
  { name: 'equipment_serial', is: 'text', also: ['equipment serial number'] },
  {
    name: 'last_done_on',
    is: 'day',
    also: [
      'last done',
      'last done date',
      'last date',
      'date done',
      'done on',
      'date',
      'last complied',
      'complied on',
      'last complied with',
      'c w date',
    ],
  },
  {
    name: 'last_done_h',
    is: 'number',
    also: ['last done', 'last done at', 'last', 'done at', 'done', 'complied at', 'last complied'],
    dimension: 'hours',
    needsUnit: ['last done', 'last', 'done', 'last complied'],
  },
  { name: 'was_due_h', is: 'number', also: ['was due', 'was due at'], dimension: 'hours' },
  { name: 'statement', is: 'text', also: ['entry', 'record entry'] },
  { name: 'signed_by', is: 'text', also: ['signed', 'signature', 'mechanic'] },
  { name: 'vor_method', is: 'word', words: VOR_METHODS },
  { name: 'vor_error_deg', is: 'number' },
  { name: 'vor_place', is: 'text' },
  { name: 'vor_signed_by', is: 'text' },
  { name: 'elt_battery_new_on', is: 'day' },
  { name: 'elt_battery_useful_life_ends_on', is: 'day' },
  { name: 'elt_battery_replace_on', is: 'day', also: ['battery replace by', 'replace battery by'] },
  { name: 'elt_use_minutes', is: 'whole' },
  { name: 'static_opened_on', is: 'day' },
  {
    name: 'next_due_on',
    is: 'day',
    also: ['next due', 'due on', 'due date', 'next due date'],
    computed: true,
  },
  {
    name: 'next_due_h',
    is: 'number',
    also: ['next due', 'next due at', 'due at', 'due'],
    dimension: 'hours',
    needsUnit: ['next due', 'due'],
    computed: true,
  },
  { name: 'state', is: 'text', computed: true },
  { name: 'left_days', is: 'text', also: ['days left', 'days remaining'], computed: true },
  { name: 'left_h', is: 'text', also: ['hours left', 'hours remaining', 'remaining'], computed: true },
];

const WEIGHT: Field = {
  name: 'weight_lb',
  is: 'number',
  also: ['weight', 'empty weight'],
  dimension: 'weight',
};
const ARM: Field = {
  name: 'arm_in',
  is: 'number',
  also: ['arm', 'station', 'empty arm', 'cg', 'empty cg'],
  dimension: 'arm',
};

/** By section. */
export const FIELDS: Readonly<Record<Section, readonly Field[]>> = {
  meter: [
    {
      name: 'kind',
      is: 'word',
      also: ['meter', 'meter kind', 'title', 'name'],
      words: METER_KINDS,
      spelt: {
        tach: 'tachometer',
        tt: 'airframe',
        ttaf: 'airframe',
        'total-time': 'airframe',
        'airframe-time': 'airframe',
        'airframe-total-time': 'airframe',
        'hobbs-meter': 'hobbs',
      },
    },
    {
      name: 'shown_h',
      is: 'number',
      also: ['shown', 'reading', 'shows', 'meter reading', 'hours'],
      dimension: 'hours',
    },
    { name: 'total_h', is: 'number', also: ['total', 'running total', 'total time'], dimension: 'hours' },
    { name: 'read_at', is: 'moment', also: ['read on', 'read', 'date', 'reading date', 'date read'] },
  ],
  equipment: [
    { name: 'kind', is: 'word', also: ['type', 'equipment kind'], words: EQUIPMENT_KINDS },
    { name: 'title', is: 'text', also: ['name', 'item', 'description', 'equipment', 'make and model'] },
    {
      name: 'basis',
      is: 'word',
      also: ['basis of approval', 'approval', 'approved by'],
      words: EQUIPMENT_BASES,
      spelt: {
        'type-certificate': 'type-design',
        tc: 'type-design',
        'supplemental-type-certificate': 'stc',
        alteration: 'alteration-record',
        'field-approval': 'alteration-record',
        'form-337': 'alteration-record',
        '337': 'alteration-record',
        carried: 'portable',
      },
    },
    { name: 'document', is: 'text', also: ['paper', 'papers', 'stc number', 'approval document'] },
    { name: 'part_number', is: 'text', also: ['part no', 'part', 'p n', 'pn'] },
    { name: 'serial_number', is: 'text', also: ['serial no', 'serial', 's n', 'sn'] },
    WEIGHT,
    ARM,
    { name: 'required_by_type_design', is: 'flag', also: ['required', 'required equipment'] },
    { name: 'satisfies', is: 'words', also: ['also serves as', 'does the work of'], words: EQUIPMENT_KINDS },
    { name: 'installed_on', is: 'day', also: ['installed', 'date installed', 'fitted on', 'since', 'date'] },
    { name: 'removed_on', is: 'day', also: ['removed', 'date removed'] },
  ],
  weight: [
    { name: 'effective_on', is: 'day', also: ['date', 'weighed on', 'as of', 'effective'] },
    WEIGHT,
    ARM,
    {
      name: 'source',
      is: 'word',
      also: ['found by', 'how'],
      words: ['weighing', 'computed', 'as-entered'],
      spelt: {
        weighed: 'weighing',
        actual: 'weighing',
        calculated: 'computed',
        'equipment-change': 'computed',
      },
    },
    { name: 'note', is: 'text', also: ['notes', 'remarks'] },
  ],
  item: ITEM,
  directive: ITEM,
};
