/** A status in the words of paper: for print, sentence by sentence what the page shows. */
import { Temporal } from 'temporal-polyfill';
import type { StatusItem, StatusPiece, StatusSquawk, StatusTime, StatusWeight } from '../status.dto.js';

const METERS = { hobbs: 'Hobbs', tachometer: 'Tachometer', airframe: 'Airframe time' } as const;

export const hours = (value: number | null): string => (value === null ? '' : `${value.toFixed(1)} h`);

/** '2026-03-09 14:00' on the clocks of a zone. */
export function momentIn(zone: string, instant: string): string {
  const local = Temporal.Instant.from(instant).toZonedDateTimeISO(zone);
  return `${local.toPlainDate().toString()} ${local.toPlainTime().toString({ smallestUnit: 'minute' })}`;
}

export function timeCells(time: StatusTime, zone: string): string[] {
  const counts = time.countsForInspections ? ' (counts for inspections)' : '';
  return [
    `${METERS[time.kind]}${counts}`,
    hours(time.shownH),
    hours(time.totalH),
    momentIn(zone, time.readAt),
  ];
}

/** 'every 50.0 h or 4 calendar months; once by 2026-05-31' */
export function intervalSays(item: StatusItem): string {
  const every = [
    item.intervalH !== null && hours(item.intervalH),
    item.calendarMonths !== null && `${item.calendarMonths} calendar months`,
    item.plainMonths !== null && `${item.plainMonths} months`,
    item.days !== null && `${item.days} days`,
  ].filter(Boolean);
  const fixed = [item.fixedDueOn, item.fixedDueH !== null && hours(item.fixedDueH)].filter(Boolean);
  const parts = [
    every.length > 0 && `every ${every.join(' or ')}`,
    fixed.length > 0 && `by ${fixed.join(' or ')}`,
    !item.recurring && 'once',
  ].filter(Boolean);
  return parts.length === 0 ? 'not entered' : parts.join('; ');
}

export function lastSays({ last }: StatusItem): string {
  if (last === null) return 'Never, as far as the records go';
  return [last.doneOn, hours(last.doneH)].filter(Boolean).join(', ');
}

export function dueSays(item: StatusItem): string {
  if (item.state === 'settled') return 'Settled';
  if (item.nextDueOn === null && item.nextDueH === null)
    return item.state === 'never-done' ? 'Now: never done' : 'Cannot be told';
  return [item.nextDueOn, hours(item.nextDueH)].filter(Boolean).join(' or ');
}

const STATES: Record<StatusItem['state'], string> = {
  overdue: 'OVERDUE',
  'never-done': 'NEVER DONE',
  unknown: 'NOT KNOWN',
  settled: 'Settled',
  running: '',
};

/** '12 days', '3.2 h over' */
const left = (value: number, unit: string, digits: number): string =>
  value < 0 ? `${(-value).toFixed(digits)} ${unit} over` : `${value.toFixed(digits)} ${unit}`;

export function leftSays(item: StatusItem): string {
  if (item.state === 'settled') return '';
  const days = item.leftDays === null ? '' : left(item.leftDays, 'days', 0);
  const inHours = item.leftH === null ? '' : left(item.leftH, 'h', 1);
  return [STATES[item.state], days, inHours].filter(Boolean).join(', ');
}

export function itemCells(item: StatusItem): string[] {
  const where =
    item.equipment === null ? '' : ` on ${pieceName(item.equipment.name, item.equipment.serialNumber)}`;
  return [
    [item.title + where, item.reference].filter(Boolean).join('\n'),
    [intervalSays(item), item.scope === 'all' ? '' : `binds: ${item.scope}`].filter(Boolean).join('\n'),
    [lastSays(item), item.last?.signedBy].filter(Boolean).join('\n'),
    dueSays(item),
    leftSays(item),
  ];
}

const pieceName = (name: string, serial: string | null): string =>
  serial === null ? name : `${name} (${serial})`;

export function pieceCells(piece: StatusPiece): string[] {
  const required = piece.requiredByTypeDesign ? 'required' : '';
  return [
    [piece.name, [piece.kind === piece.name ? '' : piece.kind, required].filter(Boolean).join(', ')]
      .filter(Boolean)
      .join('\n'),
    [piece.basis, piece.document].filter(Boolean).join('\n'),
    [piece.partNumber, piece.serialNumber && `S/N ${piece.serialNumber}`].filter(Boolean).join('\n') ||
      'not on record',
    piece.weightLb === null ? 'not known' : `${piece.weightLb} lb`,
    piece.armIn === null ? 'not known' : `${piece.armIn} in`,
    [piece.installedOn, piece.removedOn && `to ${piece.removedOn}`].filter(Boolean).join('\n'),
  ];
}

export function weightCells(weight: StatusWeight): string[] {
  const known = (value: number | null, unit: string): string =>
    value === null ? 'not known' : `${value} ${unit}`;
  return [
    `${weight.emptyWeightLb} lb`,
    known(weight.emptyArmIn, 'in'),
    known(weight.emptyMomentLbIn, 'lb-in'),
    known(weight.usefulLoadLb, 'lb'),
    weight.effectiveOn === null ? 'as entered with the aircraft' : `${weight.source}, ${weight.effectiveOn}`,
  ];
}

const SQUAWKS = {
  reported: 'Open, not yet judged',
  grounding: 'Grounds the aircraft',
  deferred: 'Deferred',
} as const;

export function squawkCells(squawk: StatusSquawk, zone: string): string[] {
  const deadline = squawk.deadlineOn === null ? '' : `, by ${squawk.deadlineOn}`;
  const steps = squawk.openSteps.length === 0 ? '' : `\nnot on record: ${squawk.openSteps.join(', ')}`;
  return [
    [squawk.title, shortened(squawk.detail)].filter(Boolean).join('\n'),
    momentIn(zone, squawk.reportedAt),
    squawk.state === 'deferred'
      ? `${SQUAWKS.deferred} ${squawk.deferredOn ?? ''}${deadline}${steps}`
      : SQUAWKS[squawk.state],
  ];
}

/** What somebody wrote at length is in the record; a table holds its beginning. */
const shortened = (text: string): string => (text.length <= 400 ? text : `${text.slice(0, 399)}…`);
