/** A flight's weather as the page shows it. */
export interface WindOnRunways {
  windKt: number | null;
  gustKt: number | null;
  runways: {
    runway: string;
    headwindKt: number | null;
    crosswindKt: number | null;
    gustHeadwindKt: number | null;
    gustCrosswindKt: number | null;
  }[];
}
export interface Field extends WindOnRunways {
  airfield: string;
  ageMinutes: number;
  densityAltitudeFt: number | null;
}
export interface PhaseOf {
  phase: 'departure' | 'en-route' | 'arrival';
  airfield: string;
  prevailing: string[];
  /** Of a forecast for departure or arrival: each wind that may prevail. */
  winds: WindOnRunways[];
  passing: { change: string; probabilityPercent: number | null; from: string; to: string; says: string }[];
  oldForecast: boolean;
}
export interface Weather {
  reports: {
    id: string;
    kind: 'metar' | 'taf';
    airfield: string;
    text: string;
    source: string;
    issuedAt: string;
    from: string | null;
    to: string | null;
  }[];
  fields: Field[];
  phases: PhaseOf[];
  unknown: string[];
  caution: string;
}

export const PHASE: Record<PhaseOf['phase'], string> = {
  departure: 'Departure',
  'en-route': 'En route',
  arrival: 'Arrival',
};
