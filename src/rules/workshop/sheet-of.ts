/** Makes the fact sheet of a case: the base sheet with what the case says laid over it. */
import { plusSeconds, toInstant, toSeconds } from '../calendar/instants.js';
import { decideCrew } from '../engine/crew.js';
import { known, unknownFact } from '../facts/fact.js';
import { readFact, replaceFact, type FactKey } from '../facts/keys.js';
import type { FactSheet, PolicyValue } from '../facts/sheet.js';
import { baseSheet } from './base-sheet.js';
import { recordOf } from './case-facts.js';
import type { Case } from './case-table.js';

/** Settings of the flight; everything else in `given` is a fact by its name. */
const SETTINGS = ['asOf', 'durationMinutes', 'knownAt', 'jurisdiction', 'flight', 'policy'];

/** The sheet of a case, and the policy values it sets. */
export function sheetOf(one: Case): { sheet: FactSheet; policy: PolicyValue[] } {
  const given = one.given ?? {};
  let sheet = baseSheet();
  const departs = (given.asOf as string | undefined) ?? sheet.flight.departs;
  const minutes = (given.durationMinutes as number | undefined) ?? 60;
  const at = toInstant(toSeconds(departs));
  sheet.flight = {
    ...sheet.flight,
    departs: at,
    arrives: plusSeconds(at, minutes * 60),
    ...(given.flight as object),
  };
  // A weather without a time was observed at departure.
  const { weather } = sheet.flight;
  if (weather && weather.observedAt === undefined) sheet.flight.weather = { ...weather, observedAt: at };
  sheet.knownAt = (given.knownAt as string | undefined) ?? plusSeconds(at, -86_400);
  if (given.jurisdiction) sheet.jurisdiction = given.jurisdiction as FactSheet['jurisdiction'];
  const crew = decideCrew(sheet.flight, { secondPilotIsPassenger: true });
  for (const [key, value] of Object.entries(given)) {
    if (SETTINGS.includes(key)) continue;
    const before = readFact(sheet, crew, key as FactKey);
    const fact =
      value === 'unknown'
        ? unknownFact(`${key} is not on record`)
        : known(complete(key, value, before.known ? before.value : undefined), sheet.knownAt);
    sheet = replaceFact(sheet, crew, key as FactKey, fact as never);
  }
  return { sheet, policy: (given.policy as PolicyValue[] | undefined) ?? [] };
}

/** Lays what the case states over a complete record; a single record is laid over the one in the base sheet. */
function complete(key: string, value: unknown, before: unknown): unknown {
  const subject = key.split('.')[1]!;
  if (Array.isArray(value)) {
    const record = recordOf(key);
    return value.map((entry: Record<string, unknown>, index) => {
      const full: Record<string, unknown> = { ...record, id: `${subject}-${index + 1}`, ...entry };
      // A log entry dated by its day alone took place at noon there.
      if (subject === 'log' && entry.on !== undefined && entry.departedAt === undefined)
        full.departedAt = `${String(entry.on)}T19:00:00Z`;
      return full;
    });
  }
  return typeof value === 'object' && value !== null ? { ...(before as object), ...value } : value;
}
