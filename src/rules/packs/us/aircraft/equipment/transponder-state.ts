/** Does this flight need a transponder and ADS-B Out, and what does the aircraft have? */
import type { Moment } from '../../../../engine/moment.js';
import type { Parameters } from '../../../../engine/parameters.js';
import type { Remedy } from '../../../../engine/remedy.js';
import type { FactView } from '../../../../engine/rule.js';
import type { EquipmentKind } from '../../../../facts/aircraft.js';
import { fittedOf, panelOf, works, type Fitted } from './panel.js';
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

/** What the airspace of the flight asks for. The exception is used only where the record says that it applies. */
export function needOf(f: Reads, p: Parameters): AirspaceNeed {
  const type = f.get('aircraft.type');
  const excepted =
    type.engineDrivenElectrical === false ||
    type.category === 'glider' ||
    type.category === 'lighter-than-air';
  return transponderNeed(
    {
      classes: f.flight.airspace,
      maxAltitudeFtMsl: f.flight.maxAltitudeFtMsl,
      nearestPrimaryNm: null,
      excepted,
    },
    p.number('us.transponder.from-ft'),
    p.number('us.transponder.veil-nm'),
    p.number('us.transponder.surface-ft'),
  );
}

/** Plans the flight where neither device is needed. */
export function avoidAirspace(f: Reads, p: Parameters): Remedy {
  const fromFt = p.number('us.transponder.from-ft');
  const { airspace, maxAltitudeFtMsl } = f.flight;
  const outside = (airspace ?? []).filter((one) => one !== 'A' && one !== 'B' && one !== 'C').sort();
  return {
    act: 'avoid-transponder-airspace',
    title: `Stay out of class A, B and C and below ${fromFt.toLocaleString('en-US')} ft.`,
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
