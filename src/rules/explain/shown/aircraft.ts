import { localDateOf, toSeconds } from '../../calendar/instants.js';
/** An aircraft's records, a line a record. */
import type {
  DeferralFact,
  DifferencesFact,
  EquipmentFact,
  ItemDetail,
  ItemFact,
  MeterFact,
  MeterKind,
  PermitFact,
  RegistrationFact,
  ReservationFact,
  SquawkFact,
  WorkFact,
} from '../../facts/aircraft.js';
import { dayAndClock, hours, parts, plain, type Show } from './shown.js';

const METER: Record<MeterKind, string> = {
  hobbs: 'Hobbs meter',
  tachometer: 'tachometer',
  airframe: 'airframe time',
};
const SQUAWK: Record<SquawkFact['state'], string> = {
  reported: 'reported, not yet looked at',
  grounding: 'grounds the aircraft',
  deferred: 'deferred',
  fixed: 'fixed',
  'no-fault-found': 'no fault found',
};

export const showMeters: Show<MeterFact[]> = (all, zone) =>
  all.map((one) => ({
    id: one.id,
    on: dayAndClock(one.readAt, zone).slice(0, 10),
    says: parts(
      `${METER[one.kind]} ${hours(one.tenths)}, read ${dayAndClock(one.readAt, zone)}`,
      one.countsForInspections && 'inspections count by it',
    ),
  }));

const interval = (one: ItemFact): string =>
  parts(
    one.calendarMonths !== null && `every ${one.calendarMonths} calendar months`,
    one.plainMonths !== null && `every ${one.plainMonths} months`,
    one.days !== null && `every ${one.days} days`,
    one.intervalTenths !== null && `every ${hours(one.intervalTenths)}`,
    one.fixedDueOn !== null && `due ${one.fixedDueOn}`,
    one.fixedDueTenths !== null && `due at ${hours(one.fixedDueTenths)}`,
  );

const detail = (of: ItemDetail): string =>
  parts(
    of.staticOpenedOn && `static system opened ${of.staticOpenedOn}`,
    of.vorMethod && `VOR check by ${plain(of.vorMethod)}`,
    of.vorErrorDeg !== undefined && `${of.vorErrorDeg} degrees found`,
    of.vorPlace && `at ${of.vorPlace}`,
    of.vorSignedBy && 'signed',
    of.eltBatteryNewOn && `battery new ${of.eltBatteryNewOn}`,
    of.eltBatteryUsefulLifeEndsOn && `useful life ends ${of.eltBatteryUsefulLifeEndsOn}`,
    of.eltBatteryReplaceOn && `to be replaced by ${of.eltBatteryReplaceOn}`,
    of.eltUseMinutes !== undefined && `${of.eltUseMinutes} minutes used`,
  );

export const showItems: Show<ItemFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    alsoIds: one.complianceId ? [one.complianceId] : [],
    on: one.lastDoneOn,
    says: parts(
      `${one.title}: ${one.lastDoneOn ? `last done ${one.lastDoneOn}` : 'never done'}`,
      one.lastDoneTenths !== null && `at ${hours(one.lastDoneTenths)}`,
      interval(one),
      one.detail && detail(one.detail),
    ),
  }));

export const showRegistrations: Show<RegistrationFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    on: one.issuedOn,
    says: parts(
      `certificate of ${one.issuedOn}`,
      one.printedExpiryOn && `printed expiry ${one.printedExpiryOn}`,
      one.endedOn && `ended ${one.endedOn}`,
    ),
  }));

export const showEquipment: Show<EquipmentFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    on: one.installedOn,
    says: parts(
      one.name === one.kind ? plain(one.kind) : `${one.name} (${plain(one.kind)})`,
      `installed ${one.installedOn}`,
      one.removedOn && `removed ${one.removedOn}`,
      one.portable && 'portable',
      one.requiredByTypeDesign && 'required by the type design',
    ),
  }));

const steps = (of: DeferralFact): string =>
  parts(`since ${of.on}`, of.deadlineOn && `until ${of.deadlineOn}`, of.placarded === true && 'placarded');

export const showSquawks: Show<SquawkFact[]> = (all, zone) =>
  all.map((one) => ({
    id: one.id,
    alsoIds: one.deferral ? [one.deferral.id] : [],
    on: dayAndClock(one.reportedAt, zone).slice(0, 10),
    says: parts(
      `“${one.title}”, reported ${dayAndClock(one.reportedAt, zone)}`,
      SQUAWK[one.state],
      one.deferral && steps(one.deferral),
    ),
  }));

export const showPermits: Show<PermitFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    on: one.from,
    says: `${one.purpose}, ${one.from} through ${one.through}`,
  }));

/** Who has it and when, as the club's calendar shows it; what for stays with the crew. */
export const showReservations: Show<ReservationFact[]> = (all, zone) =>
  all.map((one) => ({
    id: one.id,
    on: dayAndClock(one.from, zone).slice(0, 10),
    says: parts(
      one.kind === 'flight'
        ? one.holder
        : `${one.kind === 'club' ? 'the club' : 'maintenance'} (${one.holder})`,
      `${dayAndClock(one.from, zone)} until ${dayAndClock(one.to, zone)}`,
      one.expectedTenths > 0 && `${hours(one.expectedTenths)} expected`,
    ),
  }));

export const showDifferences: Show<DifferencesFact[]> = (all) =>
  all.map((one) => ({
    id: one.id,
    on: one.since,
    says: `${one.title} (${one.equipmentGroup}), since ${one.since}`,
  }));

export const showWork: Show<WorkFact[]> = (all, zone) =>
  all.map((one) => ({
    id: one.id,
    on: localDateOf(toSeconds(one.begunAt), zone),
    says: parts(
      `${one.title}: ${one.signedAt === null ? 'not signed' : `signed ${dayAndClock(one.signedAt, zone)}`}`,
      one.signedAt === null && one.backAt !== null && `expected back ${dayAndClock(one.backAt, zone)}`,
      one.checkFlightBecause !== null &&
        (one.checkFlownAt === null
          ? `check flight to be made: ${one.checkFlightBecause}`
          : `check flight made ${dayAndClock(one.checkFlownAt, zone)}`),
    ),
  }));
