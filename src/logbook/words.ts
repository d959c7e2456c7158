import type { LogFact } from '../rules/facts/person.js';

type Device = NonNullable<LogFact['device']>;

/** Roles in a flight, and training devices; the compiler sees that none is missing. */
const ROLE_SET: Record<LogFact['role'], true> = {
  'pilot-in-command': true,
  'second-in-command': true,
  'dual-received': true,
  instructor: true,
  solo: true,
};
const DEVICE_SET: Record<Device, true> = {
  'full-flight-simulator': true,
  'flight-training-device': true,
  'aviation-training-device': true,
};

export const LOG_ROLES = Object.keys(ROLE_SET) as LogFact['role'][];
export const DEVICES = Object.keys(DEVICE_SET) as Device[];
