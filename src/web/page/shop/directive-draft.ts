import { KINDS, kindWords } from '../equipment/types.js';
import { figureOf, typed } from '../parts/fields.js';
import type { Intervals } from './interval-fields.js';
import type { Directive } from './types.js';

/** A directive as it is typed. */
export interface Draft extends Intervals {
  issuer: string;
  number: string;
  title: string;
  effectiveOn: string;
  withdrawnOn: string;
  scope: Directive['scope'];
  appliesTo: Directive['appliesTo'];
  equipmentKind: string;
  modelIds: string[];
  partNumbers: string;
  /** 'HL-100 to HL-250, HL-300' */
  serials: string;
  withinDays: string;
  withinH: string;
  recurring: boolean;
  ferryProhibited: boolean;
  supersedes: string;
}

export const SCOPES: readonly (readonly [Directive['scope'], string])[] = [
  ['all', 'all'],
  ['ifr', 'under instrument rules'],
  ['night', 'by night'],
  ['hire-or-instruction', 'for hire or instruction'],
  ['transponder-use', 'with the transponder on'],
];

/** Kinds a directive or a template may name, as equipment changes name them. */
export const EQUIPMENT_CHOICES = KINDS.map((kind): [string, string] => [kind, kindWords(kind)]);

/** An empty form, or a directive to be corrected. */
export const draftOf = (of: Directive | null): Draft => ({
  ...{ issuer: of?.issuer ?? '', number: of?.number ?? '', title: of?.title ?? '' },
  ...{ effectiveOn: of?.effectiveOn ?? '', withdrawnOn: of?.withdrawnOn ?? '' },
  ...{ scope: of?.scope ?? 'all', appliesTo: of?.appliesTo ?? 'aircraft' },
  ...{ equipmentKind: of?.equipmentKind ?? 'other', modelIds: of?.modelIds ?? [] },
  partNumbers: (of?.partNumbers ?? []).join(', '),
  serials: (of?.serials ?? [])
    .map(({ from, through }) => (from === through ? from : `${from} to ${through}`))
    .join(', '),
  ...{ withinDays: typed(of?.withinDays), withinH: typed(of?.withinH), recurring: of?.recurring ?? false },
  ...{ intervalH: typed(of?.intervalH), calendarMonths: typed(of?.calendarMonths), days: typed(of?.days) },
  ...{ ferryProhibited: of?.ferryProhibited ?? false, supersedes: '' },
});

const listed = (text: string): string[] =>
  text
    .split(',')
    .map((part) => part.trim())
    .filter((part) => part !== '');

/** What is sent. Intervals of a directive that is done once are none. */
export const bodyOf = (draft: Draft) => {
  const again = (text: string): number | null => (draft.recurring ? figureOf(text) : null);
  return {
    ...{ issuer: draft.issuer, number: draft.number, title: draft.title, effectiveOn: draft.effectiveOn },
    ...{ scope: draft.scope, appliesTo: draft.appliesTo, modelIds: draft.modelIds },
    equipmentKind: draft.appliesTo === 'equipment' ? draft.equipmentKind : null,
    partNumbers: listed(draft.partNumbers),
    serials: listed(draft.serials).map((part) => {
      const [from, through] = part.split(/ to /i).map((end) => end.trim());
      return { from: from!, through: through ?? from! };
    }),
    ...{ withinDays: figureOf(draft.withinDays), withinH: figureOf(draft.withinH) },
    ...{ recurring: draft.recurring, intervalH: again(draft.intervalH) },
    ...{ calendarMonths: again(draft.calendarMonths), days: again(draft.days) },
    ferryProhibited: draft.ferryProhibited,
    withdrawnOn: draft.withdrawnOn || null,
    supersedes: draft.supersedes || null,
  };
};
