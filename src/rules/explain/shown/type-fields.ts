/** The fields of an aircraft's type and use, each as a few words. A rule that reads a field gets that field shown. */
import type { AircraftType, AircraftUse } from '../../facts/aircraft.js';
import { counted, listed } from '../words.js';
import { plain } from './shown.js';

/** Words for each field; null for one that says nothing to people. */
export type FieldWords<T> = { [F in keyof Required<T>]: (value: NonNullable<T[F]>) => string | null };

/** One field in words; absent and null give the phrase for a missing one, if there is any. */
export function fieldSays<T, F extends keyof T>(
  words: FieldWords<T>,
  missing: Partial<Record<keyof T, string>>,
  field: F,
  value: T[F] | undefined,
): string | null {
  if (value !== null && value !== undefined) return words[field](value as NonNullable<T[F]>);
  return missing[field] ?? null;
}

const KIND = { 'day-vfr': 'VFR by day', 'night-vfr': 'VFR at night', ifr: 'IFR' };

export const TYPE_WORDS: FieldWords<AircraftType> = {
  registration: (value) => value,
  modelId: () => null,
  makeModel: (value) => value,
  typeDesignator: (value) => `type designator ${value}`,
  category: (value) => `category ${plain(value)}`,
  class: (value) => (value === 'none' ? 'no class' : `class ${plain(value)}`),
  typeRating: (value) => `type rating ${value} needed`,
  seats: (value) => counted(value, 'seat'),
  occupantsCertificated: (value) => `certificated for ${counted(value, 'occupant')}`,
  engines: (value) => counted(value, 'engine'),
  powerPerEngineHp: (value) => `${value} hp an engine`,
  retractableGear: (value) => (value ? 'landing gear retracts' : 'landing gear fixed'),
  flaps: (value) => (value ? 'has flaps' : 'no flaps'),
  controllablePropeller: (value) => (value ? 'controllable propeller' : 'fixed-pitch propeller'),
  tailwheel: (value) => (value ? 'tailwheel' : 'no tailwheel'),
  pressurised: (value) => (value ? 'pressurised' : 'not pressurised'),
  serviceCeilingFt: (value) => `service ceiling ${value} ft`,
  maxOperatingAltitudeFt: (value) => `maximum operating altitude ${value} ft`,
  maxTakeoffLb: (value) => `maximum take-off weight ${value} lb`,
  emptyWeightLb: (value) => `empty weight ${value} lb`,
  usableFuelUsGal: (value) => `${value} US gal of usable fuel`,
  vs1Kcas: (value) => `stall speed VS1 ${value} kt`,
  fuelBurnUsGalPerHour: (value) => `burns ${value} US gal an hour`,
  demonstratedCrosswindKt: (value) => `demonstrated crosswind ${value} kt`,
  kindsOfOperation: (value) =>
    `type design allows ${listed(value.map((kind) => KIND[kind])) || 'nothing on record'}`,
  certificatedAfter19960311: (value) => `certificated ${value ? 'after' : 'on or before'} 1996-03-11`,
  turbine: (value) => (value ? 'turbine' : 'no turbine'),
  transportCategory: (value) => (value ? 'transport category' : 'not transport category'),
  altitudeEngine: (value) => (value ? 'altitude engine' : 'no altitude engine'),
  manufacturedOn: (value) => `manufactured ${value}`,
  engineDrivenElectrical: (value) => `${value ? '' : 'no '}engine-driven electrical system`,
  approvedEquipmentList: (value) => `${value ? 'flown' : 'not flown'} under an approved equipment list`,
};

const TYPE_MAY_LACK: Partial<Record<keyof AircraftType, string>> = {
  powerPerEngineHp: 'engine power',
  serviceCeilingFt: 'service ceiling',
  maxOperatingAltitudeFt: 'maximum operating altitude',
  maxTakeoffLb: 'maximum take-off weight',
  emptyWeightLb: 'empty weight',
  usableFuelUsGal: 'usable fuel',
  vs1Kcas: 'stall speed VS1',
  fuelBurnUsGalPerHour: 'fuel burn',
  demonstratedCrosswindKt: 'demonstrated crosswind',
  altitudeEngine: 'altitude engine',
  manufacturedOn: 'date of manufacture',
  engineDrivenElectrical: 'engine-driven electrical system',
  approvedEquipmentList: 'approved equipment list',
};

/** Phrases for fields that may be missing. */
export const TYPE_MISSING = Object.fromEntries(
  Object.entries(TYPE_MAY_LACK).map(([field, name]) => [field, `${name} not on record`]),
) as Partial<Record<keyof AircraftType, string>>;

export const USE_WORDS: FieldWords<AircraftUse> = {
  status: (value) => plain(value),
  instructionForHire: (value) => `${value ? '' : 'no '}instruction for hire is given in it`,
  carriesForHire: (value) => `${value ? 'carries' : 'carries nobody'} for hire`,
};
