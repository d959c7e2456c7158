/** Answers of the maintenance endpoints, as far as the pages show them. */
export interface ForecastItem {
  id: string;
  kind: string;
  title: string;
  scope: string;
  state: 'overdue' | 'never-done' | 'unknown' | 'settled' | 'running';
  throughOn: string | null;
  leftDays: number | null;
  leftH: number | null;
  likelyOn: string | null;
  earliestOn: string | null;
  latestOn: string | null;
  by: 'date' | 'hours' | null;
  passing: { bookingId: string; departs: string } | null;
  says: string;
}

export interface ForecastWeek {
  monday: string;
  trendH: number;
  basis: 'last-year' | 'recent';
  bookedH: number;
  likelySumH: number;
  leastSumH: number | null;
  mostSumH: number | null;
}

export interface AircraftForecast {
  aircraftId: string;
  registration: string;
  makeModel: string;
  meterH: number | null;
  readAt: string | null;
  slotOn: string | null;
  items: ForecastItem[];
  weeks: ForecastWeek[];
}

export interface Forecast {
  today: string;
  aircraft: AircraftForecast[];
  coverage: number | null;
  testedBy: number;
  tested: string;
  caution: string;
}
