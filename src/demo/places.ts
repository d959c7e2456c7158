import type { AirfieldRow, RunwayRow } from './rows.js';
import { ZONE } from './when.js';
import { DEMO_CLUB_ID, demoId } from './ids.js';
import type { Instant } from '../rules/index.js';

/** An invented airfield. Designators are magnetic; the variation of these parts is taken as 8 degrees east. */
export interface Place {
  id: string;
  code: string;
  name: string;
  latitudeDeg: number;
  longitudeDeg: number;
  elevationFt: number;
  lit: boolean;
  runways: {
    pair: [string, string];
    trueHeadingDeg: number;
    lengthFt: number;
    surface: 'paved' | 'grass';
    lit: boolean;
  }[];
}

const place = (fields: Omit<Place, 'id' | 'lit'>): Place => ({
  ...fields,
  id: demoId('airfield', fields.code),
  lit: fields.runways.some((runway) => runway.lit),
});

/** Home: two paved runways, one lit. */
export const HOME = place({
  code: 'XQQM',
  name: 'Quill Mesa',
  latitudeDeg: 41.221,
  longitudeDeg: -105.043,
  elevationFt: 5285,
  runways: [
    { pair: ['08', '26'], trueHeadingDeg: 88, lengthFt: 4800, surface: 'paved', lit: true },
    { pair: ['17', '35'], trueHeadingDeg: 178, lengthFt: 3400, surface: 'paved', lit: false },
  ],
});
/** A long lit runway on the plain, about 33 nautical miles from home. */
export const DUNFERN = place({
  code: 'XQDF',
  name: 'Dunfern Field',
  latitudeDeg: 40.818,
  longitudeDeg: -104.552,
  elevationFt: 5870,
  runways: [{ pair: ['11', '29'], trueHeadingDeg: 118, lengthFt: 7000, surface: 'paved', lit: true }],
});
/** High in the hills, more than 50 nautical miles from home, not lit. */
export const SPARROW = place({
  code: 'XQSP',
  name: 'Sparrow Pass',
  latitudeDeg: 40.502,
  longitudeDeg: -105.748,
  elevationFt: 7860,
  runways: [{ pair: ['03', '21'], trueHeadingDeg: 38, lengthFt: 5500, surface: 'paved', lit: false }],
});
/** A grass strip by the river, about 29 nautical miles from home. */
export const TANSY = place({
  code: 'XQTB',
  name: 'Tansy Bottom',
  latitudeDeg: 41.619,
  longitudeDeg: -104.702,
  elevationFt: 4715,
  runways: [{ pair: ['15', '33'], trueHeadingDeg: 158, lengthFt: 2300, surface: 'grass', lit: false }],
});

/** More than 30 NM from every primary airport of 14 CFR part 91, appendix D: low in class E nobody needs a transponder. */
export const PLACES: readonly Place[] = [HOME, DUNFERN, SPARROW, TANSY];

/** Airfield and runway rows: one runway row a direction. */
export function placeRows(recordedAt: Instant): { airfields: AirfieldRow[]; runways: RunwayRow[] } {
  const airfields = PLACES.map((one): AirfieldRow => ({
    club_id: DEMO_CLUB_ID,
    id: one.id,
    code: one.code,
    name: one.name,
    latitude_deg: one.latitudeDeg,
    longitude_deg: one.longitudeDeg,
    elevation_ft: one.elevationFt,
    zone: ZONE,
    recorded_at: recordedAt,
  }));
  const runways = PLACES.flatMap((one) =>
    one.runways.flatMap((runway) =>
      runway.pair.map((designator, index): RunwayRow => ({
        club_id: DEMO_CLUB_ID,
        id: demoId('runway', one.code, designator),
        airfield_id: one.id,
        designator,
        true_heading_deg: (runway.trueHeadingDeg + index * 180) % 360,
        length_ft: runway.lengthFt,
        surface: runway.surface,
        lit: runway.lit,
        slope_percent: 0,
        recorded_at: recordedAt,
      })),
    ),
  );
  return { airfields, runways };
}
