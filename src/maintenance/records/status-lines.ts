/** A status out of its rows. What is due when comes from the rules; nothing is reckoned here a second time. Pure. */
import { currentSource } from './weight-source.js';
import { stateOf } from '../forecast/aircraft-forecast.js';
import type { Equipment } from '../../fleet/equipment/equipment.entity.js';
import { openSteps } from '../../fleet/squawks/deferral-steps.js';
import { ITEM_KINDS, METER_KINDS } from '../../fleet/vocabulary.js';
import { hoursOf } from '../../platform/http/views.js';
import {
  daysBetween,
  duesByItems,
  duesUnder14Cfr,
  type ItemDue,
  type Jurisdiction,
  type LocalDate,
} from '../../rules/index.js';
import type {
  StatusItem,
  StatusPiece,
  StatusSquawk,
  StatusTime,
  StatusView,
  StatusWeight,
} from './status.dto.js';
import type { StatusRows } from './status-rows.js';

export type StatusFacts = Pick<
  StatusView,
  'aircraft' | 'times' | 'items' | 'directives' | 'equipment' | 'weight' | 'squawks'
>;

/** The sections of a status. */
export function statusFacts(
  rows: StatusRows,
  of: { on: LocalDate; today: LocalDate; jurisdiction: Jurisdiction },
): StatusFacts {
  const { aircraft, model } = rows;
  const meter = rows.readings.find(({ kind }) => kind === aircraft.inspectionMeter);
  const dues = of.jurisdiction === 'US' ? duesUnder14Cfr(rows.facts, of.on) : duesByItems(rows.facts, of.on);
  const lines = dues.map((due) => itemLine(due, rows, of.on, meter?.totalTenths ?? null)).sort(inOrder);
  return {
    aircraft: {
      id: aircraft.id,
      registration: aircraft.registration,
      makeModel: model.makeModel,
      serialNumber: aircraft.serialNumber,
      manufacturedOn: aircraft.manufacturedOn,
      inspectionMeter: aircraft.inspectionMeter,
    },
    times: timeLines(rows),
    items: lines.filter(({ kind }) => kind !== 'directive'),
    directives: lines.filter(({ kind }) => kind === 'directive'),
    equipment: rows.equipment
      .filter(
        ({ installedOn, removedOn }) => installedOn <= of.on && (removedOn === null || removedOn > of.on),
      )
      .map(pieceLine)
      .sort(piecesInOrder),
    weight: weightLine(rows, of),
    squawks: squawkLines(rows, of.on),
  };
}

function timeLines({ readings, aircraft }: StatusRows): StatusTime[] {
  return METER_KINDS.flatMap((kind) => {
    const reading = readings.find((one) => one.kind === kind);
    if (!reading) return [];
    return {
      kind,
      shownH: reading.shownTenths / 10,
      totalH: reading.totalTenths / 10,
      readAt: reading.readAt,
      countsForInspections: aircraft.inspectionMeter === kind,
    };
  });
}

function itemLine(due: ItemDue, rows: StatusRows, on: LocalDate, meterTenths: number | null): StatusItem {
  const { item } = due;
  const last = rows.done.get(item.id);
  const equipmentId = rows.items.get(item.id)?.equipmentId ?? null;
  const piece = rows.equipment.find(({ id }) => id === equipmentId);
  const left = due.throughTenths === null || meterTenths === null ? null : due.throughTenths - meterTenths;
  return {
    ...{ id: item.id, kind: item.kind, title: item.title, reference: item.reference, scope: item.scope },
    ...{ calendarMonths: item.calendarMonths, plainMonths: item.plainMonths, days: item.days },
    intervalH: hoursOf(item.intervalTenths),
    fixedDueOn: item.fixedDueOn,
    fixedDueH: hoursOf(item.fixedDueTenths),
    toleranceH: hoursOf(item.toleranceTenths),
    ...{ recurring: item.recurring, ferryProhibited: item.ferryProhibited },
    ...{ since: item.since ?? null, retiredOn: item.retiredOn ?? null },
    equipment: piece ? { name: piece.name, serialNumber: piece.serialNumber } : null,
    last: last
      ? {
          ...{ doneOn: last.doneOn, doneH: hoursOf(last.doneTenths), dueH: hoursOf(last.dueTenths) },
          ...{ statement: last.statement, signedBy: last.signedBy, detail: last.detail },
        }
      : null,
    state: stateOf(due, left, on),
    nextDueOn: due.throughOn,
    nextDueH: hoursOf(due.throughTenths),
    leftDays: due.throughOn === null ? null : daysBetween(on, due.throughOn),
    leftH: hoursOf(left),
  };
}

/** By kind in the order of the vocabulary, then by title: the order of paper, the same on every print. */
function inOrder(a: StatusItem, b: StatusItem): number {
  const key = (one: StatusItem): string =>
    [String(ITEM_KINDS.indexOf(one.kind)).padStart(2, '0'), one.title, one.reference ?? '', one.id].join(
      '\n',
    );
  return key(a) < key(b) ? -1 : 1;
}

function pieceLine(piece: Equipment): StatusPiece {
  return {
    ...{ id: piece.id, kind: piece.kind, name: piece.name, basis: piece.basis, document: piece.document },
    ...{ partNumber: piece.partNumber, serialNumber: piece.serialNumber },
    ...{ weightLb: piece.weightLb, armIn: piece.armIn },
    ...{ requiredByTypeDesign: piece.requiredByTypeDesign, satisfies: piece.satisfies },
    ...{ installedOn: piece.installedOn, removedOn: piece.removedOn },
  };
}

function piecesInOrder(a: StatusPiece, b: StatusPiece): number {
  const key = (one: StatusPiece): string =>
    [one.kind, one.name, one.serialNumber ?? '', one.installedOn, one.id].join('\n');
  return key(a) < key(b) ? -1 : 1;
}

/** What was entered with the aircraft counts today only: of what day it is, nobody wrote down. */
function weightLine(
  { weighing, aircraft, model }: StatusRows,
  { on, today }: { on: LocalDate; today: LocalDate },
): StatusWeight | null {
  const emptyWeightLb = weighing?.emptyWeightLb ?? (on === today ? aircraft.emptyWeightLb : null);
  if (emptyWeightLb === null) return null;
  const emptyArmIn = weighing?.emptyArmIn ?? null;
  return {
    ...{ effectiveOn: weighing?.effectiveOn ?? null, emptyWeightLb, emptyArmIn },
    emptyMomentLbIn: emptyArmIn === null ? null : Math.round(emptyWeightLb * emptyArmIn * 100) / 100,
    source: weighing ? currentSource(weighing.source) : 'as-entered',
    note: weighing?.note ?? '',
    maxTakeoffLb: model.maxTakeoffLb,
    usefulLoadLb:
      model.maxTakeoffLb === null ? null : Math.round((model.maxTakeoffLb - emptyWeightLb) * 100) / 100,
  };
}

function squawkLines({ squawks, deferrals, aircraft }: StatusRows, on: LocalDate): StatusSquawk[] {
  return squawks.flatMap((squawk) => {
    const then = squawk.closedAt === null ? squawk.state : (squawk.closedFrom ?? 'reported');
    if (then !== 'reported' && then !== 'grounding' && then !== 'deferred') return [];
    const deferral = deferrals.get(squawk.id);
    const deferred = then === 'deferred' && deferral !== undefined && deferral.deferredOn <= on;
    // Before the day of its deferral it was open like any other.
    const state = then === 'deferred' && !deferred ? 'reported' : then;
    return {
      ...{ id: squawk.id, title: squawk.title, detail: squawk.detail, state, reportedAt: squawk.reportedAt },
      deferredOn: deferred ? deferral.deferredOn : null,
      deadlineOn: deferred ? deferral.deadlineOn : null,
      openSteps: deferred ? openSteps(deferral, aircraft) : [],
    };
  });
}
