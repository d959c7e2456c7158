/** Between a practice record as the service has it and a form as it is typed. What is left empty is not recorded. */
import type { PracticeRecord } from './types.js';
import { MEASURES } from './words.js';

export type Typed = Record<string, string>;

const yesNo = (value: boolean | null): string => (value === null ? '' : value ? 'yes' : 'no');
const figure = (value: number | null): string => (value === null ? '' : String(value));

export const nothingYet = (flownOn: string): Typed => ({ flownOn, manoeuvre: 'normal_landing' });

/** What somebody would have typed for the record as it is. */
export function typedOf(record: PracticeRecord): Typed {
  const measured = MEASURES.flatMap(({ measure }) => {
    const span = record.measured?.[measure];
    return span
      ? [[`${measure}.least`, String(span.least)] as const, [`${measure}.most`, String(span.most)] as const]
      : [];
  });
  return {
    ...Object.fromEntries(measured),
    ...{ flownOn: record.flownOn, manoeuvre: record.manoeuvre, level: record.level, note: record.note },
    ...{ night: yesNo(record.night), good: yesNo(record.toStandard) },
    ...{ crosswindKt: figure(record.crosswindKt), gustSpreadKt: figure(record.gustSpreadKt) },
    ...{ runwayFt: figure(record.runwayFt), equipment: (record.equipment ?? []).join(', ') },
  };
}

/** 'autopilot, moving map' as a list; null: not said. */
export function groupsOf(text: string): string[] | null {
  const groups = text.split(',').flatMap((one) => one.trim() || []);
  return groups.length === 0 ? null : groups;
}

/** The record as it is sent. */
export function bodyOf(typed: Typed): Record<string, unknown> {
  const number = (name: string): number | null => (typed[name] ? Number(typed[name]) : null);
  const yes = (name: string): boolean | null => (typed[name] ? typed[name] === 'yes' : null);
  const measured = Object.fromEntries(
    MEASURES.flatMap(({ measure }) => {
      const [least, most] = [number(`${measure}.least`), number(`${measure}.most`)];
      return least === null && most === null
        ? []
        : [[measure, { least: least ?? most, most: most ?? least }]];
    }),
  );
  return {
    ...{ flownOn: typed['flownOn'], manoeuvre: typed['manoeuvre'], measured, night: yes('night') },
    ...(typed['level'] ? { level: typed['level'] } : {}),
    ...{ crosswindKt: number('crosswindKt'), gustSpreadKt: number('gustSpreadKt') },
    ...{ runwayFt: number('runwayFt'), equipment: groupsOf(typed['equipment'] ?? '') },
    ...{ toStandard: yes('good'), note: typed['note'] ?? '' },
  };
}
