/** Complete example records of weather, told and reported. */
import type { DeclaredForecast, DeclaredWeather } from '../facts/flight.js';
import type { WeatherConditions, WeatherReport } from '../facts/weather.js';

export const WEATHER: DeclaredWeather = {
  observedAt: '2027-03-01T18:00:00Z',
  windFromDeg: 90,
  windKt: 5,
  gustKt: 0,
  visibilitySm: 10,
  ceilingFtAgl: 5000,
  temperatureC: 10,
  altimeterInHg: 29.92,
  wet: false,
};

/** Weather nobody minds. */
export const CONDITIONS: WeatherConditions = {
  ...{ windFromDeg: 90, windKt: 5, gustKt: null, windVaries: null },
  ...{ visibilitySm: 10, visibilityIs: 'exactly', ceilingFtAgl: 5000, ceilingIs: 'base' },
  ...{ phenomena: [], temperatureC: 10, dewPointC: 2, altimeterInHg: 29.92 },
};

/** A forecast under which an airplane needs no alternate, from two hours before the base flight arrives to two after. */
export const FORECAST: DeclaredForecast = {
  from: '2027-03-01T17:00:00Z',
  to: '2027-03-01T21:00:00Z',
  ceilingFtAgl: 5000,
  visibilitySm: 10,
  approachPublished: true,
};

/** A fair report of the base flight's field, an hour before it leaves. */
export const REPORT: WeatherReport = {
  ...{ id: 'report-1', kind: 'metar', airfield: 'XQHB', text: 'METAR XQHB 011700Z', source: 'fetched' },
  ...{ issuedAt: '2027-03-01T17:00:00Z', obtainedAt: '2027-03-01T17:05:00Z' },
  observed: CONDITIONS,
  ...{ trend: null, from: null, to: null },
  periods: [
    {
      ...{ change: 'prevailing', probabilityPercent: null, text: 'FM011600' },
      ...{ from: '2027-03-01T16:00:00Z', to: '2027-03-02T16:00:00Z' },
      conditions: CONDITIONS,
    },
  ],
  unread: [],
};
