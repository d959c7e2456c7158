/** Does this flight need a transponder and ADS-B Out, and what does the aircraft have? */
import { grouped } from '../../../../explain/words.js';
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import type { Remedy } from '../../../../engine/remedy.js';
import type { FactView } from '../../../../engine/rule.js';
import type { AircraftType, EquipmentKind } from '../../../../facts/aircraft.js';
import { roundNm } from '../../../common/shared/distance.js';
import { fittedOf, panelOf, works, type Fitted } from './panel.js';
import { nearestPrimary, PRIMARY_AIRPORTS, type PrimaryAirport } from './primary-airports.js';
import { transponderNeed, type AirspaceNeed } from './transponder-airspace.js';

export const TRANSPONDER_READS = ['aircraft.type', 'aircraft.equipment', 'aircraft.squawks'] as const;
export const TRANSPONDER_PARAMETERS = [
  'us.transponder.from-ft',
  'us.transponder.veil-nm',
  'us.transponder.surface-ft',
  'us.ads-b.required',
] as const;

type Reads = FactView<(typeof TRANSPONDER_READS)[number]>;

/** One device the airspace may ask for. */
export interface DeviceState {
  kind: EquipmentKind;
  words: string;
  fitted: Fitted[];
  /** Fitted, works, and is not left off. */
  at: 'hand' | 'down' | 'off' | 'not-fitted';
}

/** The devices asked for on the day of the flight; none of them can be portable. */
export function devices(f: Reads, moment: Moment, p: Parameters): DeviceState[] {
  const panel = panelOf(f.get('aircraft.equipment'), f.get('aircraft.squawks'), moment);
  const state = (kind: EquipmentKind, words: string, off: boolean): DeviceState => {
    const fitted = fittedOf(panel, [kind]);
    if (fitted.length === 0) return { kind, words, fitted, at: 'not-fitted' };
    if (!fitted.some(works)) return { kind, words, fitted, at: 'down' };
    return { kind, words, fitted, at: off ? 'off' : 'hand' };
  };
  const off = f.flight.usesTransponder === false;
  const list = [state('transponder', 'a transponder that reports altitude', off)];
  if (p.flag('us.ads-b.required')) list.push(state('ads-b-out', 'ADS-B Out', false));
  return list;
}

/**
 * What the airspace of the flight asks for. The exception is used only where the record says that it applies. An airfield
 * of the route near a listed airport asks for the devices; what is flown between airfields is not known, so keeping clear
 * stays a condition that names the nearest.
 */
export function needOf(
  f: Reads,
  p: Parameters,
  airports: readonly PrimaryAirport[] = PRIMARY_AIRPORTS,
): AirspaceNeed {
  const nearest = nearestPrimary(f.flight.route, airports);
  const veilNm = p.number('us.transponder.veil-nm');
  const excepted = isExcepted(f.get('aircraft.type'));
  const need = transponderNeed(
    {
      classes: f.flight.airspace,
      maxAltitudeFtMsl: f.flight.maxAltitudeFtMsl,
      nearestPrimaryNm: nearest?.nm ?? null,
      excepted,
    },
    p.number('us.transponder.from-ft'),
    veilNm,
    p.number('us.transponder.surface-ft'),
  );
  if (need.needed || excepted || nearest === null) return need;
  const { airport, field, nm } = nearest;
  return {
    ...need,
    conditions: [
      ...need.conditions,
      `Stay more than ${veilNm} NM from the primary airports listed in part 91, appendix D; the nearest to an airfield of the route is ${airport.city} (${airport.code}), ${roundNm(nm)} NM from ${field.code}.`,
    ],
  };
}

/** Another plan that needs neither device: none where an airfield of the route itself asks for them. */
export function planAround(f: Reads, p: Parameters): Remedy[] {
  const nearest = isExcepted(f.get('aircraft.type'))
    ? null
    : nearestPrimary(f.flight.route, PRIMARY_AIRPORTS);
  return nearest !== null && nearest.nm <= p.number('us.transponder.veil-nm') ? [] : [avoidAirspace(f, p)];
}

/** Aircraft of the exceptions of 14 CFR 91.215(b)(3) and (5), as far as the record says so. */
const isExcepted = (type: AircraftType): boolean =>
  type.engineDrivenElectrical === false || type.category === 'glider' || type.category === 'lighter-than-air';

/** Plans the flight where neither device is needed. */
export function avoidAirspace(f: Reads, p: Parameters): Remedy {
  const fromFt = p.number('us.transponder.from-ft');
  const { airspace, maxAltitudeFtMsl } = f.flight;
  const outside = (airspace ?? []).filter((one) => one !== 'A' && one !== 'B' && one !== 'C').sort();
  return {
    act: 'avoid-transponder-airspace',
    title: `Stay out of class A, B and C and below ${grouped(fromFt)} ft.`,
    by: 'member',
    effects: [
      {
        op: 'flight',
        fields: {
          airspace: outside.length > 0 ? outside : ['E', 'G'],
          maxAltitudeFtMsl: maxAltitudeFtMsl === null ? null : Math.min(maxAltitudeFtMsl, fromFt - 1),
        },
      },
    ],
  };
}
