import { defineParameter, type DatedValue, type Parameter, type ParameterValue } from '../parameter.js';

const one = <T extends ParameterValue>(
  id: string,
  title: string,
  unit: Parameter['unit'],
  status: Parameter['status'],
  ...values: DatedValue<T>[]
): Parameter<T> =>
  defineParameter({ id, title, unit, values, checkedOn: '2026-11-25', status, recheckAfterMonths: 12 });

/** Thresholds of the equipment sections of 14 CFR part 91, and what the loading check counts with. */
export const EQUIPMENT_PARAMETERS: readonly Parameter[] = [
  one(
    'us.equipment.harness-after',
    'Small airplanes made after this date have front shoulder harnesses',
    'date',
    'seen',
    {
      from: null,
      value: '1978-07-18',
      reference: '14 CFR 91.205(b)(14)',
    },
  ),
  one(
    'us.equipment.dme-from-ft',
    'At and above this altitude DME or RNAV is needed under IFR',
    'ft',
    'seen',
    {
      from: null,
      value: 24_000,
      reference: '14 CFR 91.205(e)',
    },
  ),
  one('us.equipment.small-aircraft-lb', 'Greatest take-off weight of a small aircraft', 'lb', 'from memory', {
    from: null,
    value: 12_500,
    reference: '14 CFR 1.1, small aircraft; 91.213(d)(1)',
  }),
  one('us.transponder.from-ft', 'At and above this altitude a transponder is needed', 'ft', 'seen', {
    from: null,
    value: 10_000,
    reference: '14 CFR 91.215(b)(5), 91.225(d)(4)',
  }),
  one(
    'us.transponder.veil-nm',
    'Radius around a listed primary airport in which it is needed',
    'nm',
    'seen',
    {
      from: null,
      value: 30,
      reference: '14 CFR 91.215(b)(2), 91.225(d)(2), part 91 appendix D section 1',
    },
  ),
  one(
    'us.transponder.surface-ft',
    'Height above the surface up to which altitude alone asks for none',
    'ft',
    'seen',
    {
      from: null,
      value: 2500,
      reference: '14 CFR 91.215(b)(5), 91.225(d)(4)',
    },
  ),
  one('us.ads-b.gulf-from-ft', 'Altitude over the Gulf from which ADS-B Out is needed', 'ft', 'seen', {
    from: null,
    value: 3000,
    reference: '14 CFR 91.225(d)(5)',
  }),
  one('us.ads-b.gulf-within-nm', 'Distance from the coast of the Gulf within which it is', 'nm', 'seen', {
    from: null,
    value: 12,
    reference: '14 CFR 91.225(d)(5)',
  }),
  one(
    'us.ads-b.required',
    'ADS-B Out is needed in that airspace',
    'flag',
    'from memory',
    { from: null, value: false, reference: '14 CFR 91.225 before its compliance date' },
    { from: '2020-01-02', value: true, reference: '14 CFR 91.225(d), after 2020-01-01' },
  ),
];
