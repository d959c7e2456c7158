import { enduranceMinutes, fuelForUsGal, hasFuelFor } from '../../../air/fuel.js';
import type { Moment } from '../../../engine/moment.js';
import type { Parameters } from '../../../engine/parameters.js';
import type { Remedy } from '../../../engine/remedy.js';
import { defineRule, type FactView } from '../../../engine/rule.js';
import { need } from '../../../engine/unknown.js';
import { touchesNight } from '../../../sky/nights.js';
import { CARRY_TO_ALTERNATE } from './alternate.js';

/**
 * 14 CFR 91.151 and 91.167: fuel for the planned time and the reserve after it, at normal cruise. The fuel declared
 * counts up to the usable capacity. Under IFR the fuel to an alternate stays a condition: the request names none.
 */
export const fuelReserve = defineRule({
  id: 'fuel.reserve',
  title: 'Fuel for the flight and its reserve',
  weight: 'law',
  binds: 'flight',
  settledAt: 'departure',
  whenUnknown: 'Work out the fuel: enough for the planned flight and the reserve of 14 CFR 91.151 or 91.167.',
  reads: ['aircraft.type'],
  parameters: [
    'us.fuel.vfr-day-reserve',
    'us.fuel.vfr-night-reserve',
    'us.fuel.vfr-rotorcraft-reserve',
    'us.fuel.ifr-reserve',
    'us.fuel.ifr-helicopter-reserve',
  ],
  branches: {
    'no-fuel-rule': {
      status: 'not-applicable',
      says: 'The fuel rules are written for airplanes and rotorcraft.',
    },
    enough: {
      status: 'met',
      says: '{fuel} gal last {lasts} minutes: enough for {enroute} minutes and a reserve of {reserve}.',
    },
    short: {
      status: 'short',
      says: '{fuel} gal last {lasts} minutes; {enroute} minutes and a reserve of {reserve} need {gallons} gal.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.151, 91.167',
        status: 'seen',
        reading:
          'The whole planned time must be in the tanks at departure: fuel taken on the way is not counted on.',
      },
      judge(f, moment, p, take) {
        const type = f.get('aircraft.type');
        if (type.category !== 'airplane' && type.category !== 'rotorcraft') return take('no-fuel-rule');
        const burn = need(
          type.fuelBurnUsGalPerHour,
          'aircraft.type',
          'the fuel burn at cruise is not on record',
        );
        const loaded = need(
          f.flight.loading?.fuelUsGal,
          'flight.loading',
          'the fuel on board is not declared',
        );
        const enroute = f.flight.plannedTenths * 6;
        need(enroute > 0 ? enroute : null, 'flight.plannedTenths', 'the planned flight time is not declared');
        const fuel = Math.min(loaded, type.usableFuelUsGal ?? loaded);
        const { reserve, enough } = reserveOf(f, moment, p, type.category === 'rotorcraft', (minutes) =>
          hasFuelFor(enroute + minutes, fuel, burn),
        );
        const values = {
          fuel: round(fuel),
          lasts: enduranceMinutes(fuel, burn),
          enroute,
          reserve,
          gallons: round(fuelForUsGal(enroute + reserve, burn)),
        };
        if (!enough)
          return take('short', values, {
            remedies: () => remediesFor(f.flight, type.usableFuelUsGal, reserve, burn, fuel),
          });
        return take('enough', values, {
          conditions: f.flight.flightRules === 'IFR' ? [CARRY_TO_ALTERNATE] : [],
        });
      },
    },
  ],
});

/** The reserve asked for, and whether the fuel covers it. The sun is asked only where the night's does not fit. */
function reserveOf(
  f: FactView,
  moment: Moment,
  p: Parameters,
  rotorcraft: boolean,
  covers: (minutes: number) => boolean,
): { reserve: number; enough: boolean } {
  const judged = (reserve: number) => ({ reserve, enough: covers(reserve) });
  if (f.flight.flightRules === 'IFR')
    return judged(p.number(rotorcraft ? 'us.fuel.ifr-helicopter-reserve' : 'us.fuel.ifr-reserve'));
  if (rotorcraft) return judged(p.number('us.fuel.vfr-rotorcraft-reserve'));
  const day = judged(p.number('us.fuel.vfr-day-reserve'));
  const night = judged(p.number('us.fuel.vfr-night-reserve'));
  if (night.enough) return night;
  return touchesNight(moment, f.flight.route, 'civil') ? night : day;
}

function remediesFor(
  flight: FactView['flight'],
  usable: number | null,
  reserve: number,
  burn: number,
  fuel: number,
): Remedy[] {
  const enroute = flight.plannedTenths * 6;
  const wanted = Math.ceil(fuelForUsGal(enroute + reserve, burn) * 10 - 1e-6) / 10;
  const shorter = Math.floor((enduranceMinutes(fuel, burn) - reserve) / 6);
  const remedies: Remedy[] = [];
  if (usable === null || wanted <= usable) {
    remedies.push({
      act: 'take-more-fuel',
      title: `Take at least ${wanted} US gallons of fuel.`,
      by: 'member',
      effects: [
        {
          op: 'flight',
          fields: { loading: { occupantsLb: null, baggageLb: null, ...flight.loading, fuelUsGal: wanted } },
        },
      ],
    });
  }
  if (shorter >= 1) {
    remedies.push({
      act: 'shorten-flight',
      title: `Plan a flight of no more than ${(shorter / 10).toFixed(1)} hours.`,
      by: 'member',
      effects: [{ op: 'flight', fields: { plannedTenths: shorter } }],
    });
  }
  return remedies;
}

const round = (gallons: number): string => gallons.toFixed(1);
