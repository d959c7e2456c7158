/** What can be chosen of a file of flights, in words. */
type Words = readonly (readonly [value: string, words: string])[];

/** What a column can be, by what it is about. */
export const FIELDS: readonly (readonly [group: string, fields: Words])[] = [
  [
    'When and where',
    [
      ['flownOn', 'date'],
      ['departedAt', 'off blocks'],
      ['arrivedAt', 'on blocks'],
      ['fromAirfield', 'from'],
      ['toAirfield', 'to'],
    ],
  ],
  [
    'Aircraft',
    [
      ['registration', 'registration'],
      ['makeModel', 'make and model'],
      ['aircraftWords', 'aircraft in words'],
      ['category', 'category'],
      ['class', 'class'],
      ['typeRating', 'type rating'],
      ['tailwheel', 'tailwheel'],
      ['device', 'training device'],
    ],
  ],
  [
    'Hours',
    [
      ['totalH', 'total hours'],
      ['nightH', 'night hours'],
      ['crossCountryH', 'cross-country hours'],
      ['actualInstrumentH', 'actual instrument hours'],
      ['simulatedInstrumentH', 'simulated instrument hours'],
      ['dualGivenH', 'hours of instruction given'],
      ['picH', 'hours as pilot in command'],
      ['sicH', 'hours as second in command'],
      ['dualReceivedH', 'hours of dual received'],
      ['soloH', 'solo hours'],
    ],
  ],
  [
    'Take-offs and landings',
    [
      ['takeoffs', 'take-offs, all'],
      ['dayTakeoffs', 'take-offs by day'],
      ['nightTakeoffs', 'take-offs at night'],
      ['landings', 'landings, all'],
      ['dayLandings', 'landings by day'],
      ['nightLandings', 'landings at night'],
      ['fullStopLandings', 'full-stop landings, all'],
      ['dayFullStopLandings', 'full-stop landings by day'],
      ['nightFullStopLandings', 'full-stop landings at night'],
    ],
  ],
  [
    'Other',
    [
      ['role', 'role'],
      ['soleManipulator', 'sole manipulator'],
      ['approaches', 'instrument approaches'],
      ['holding', 'holding'],
      ['interceptTrack', 'intercepting and tracking'],
      ['remarks', 'remarks'],
    ],
  ],
];

export const FORMS: Words = [
  ['decimal', 'decimal hours: 1.5'],
  ['clock', 'hours and minutes: 1:30'],
  ['either', 'each as it looks: 1.5 or 1:30'],
  ['minutes', 'minutes: 90'],
  ['point-clock', 'hours and minutes with a point: 1.30'],
];

/** What stands where nothing is chosen. */
const OPEN = ['', 'choose'] as const;

export const DATES: Words = [
  OPEN,
  ['year-first', 'year first, or the month in letters'],
  ['day-first', 'day first: 28/02/2026'],
  ['month-first', 'month first: 02/28/2026'],
];
export const DECIMALS: Words = [OPEN, ['point', 'a point: 1.5'], ['comma', 'a comma: 1,5']];
export const CLOCKS: Words = [
  OPEN,
  ['utc', 'UTC, and so are the dates'],
  ['utc-local-date', 'UTC, with the dates of the place'],
  ['zone', 'a zone’s clock'],
];
export const ROLES: Words = [
  ['', 'no role: such rows are not read'],
  ['pilot-in-command', 'pilot in command'],
  ['dual-received', 'dual received'],
  ['solo', 'solo'],
  ['instructor', 'instructor'],
  ['second-in-command', 'second in command'],
];
/** Category and class as one choice. */
export const CLASSES: Words = [
  ['', 'choose'],
  ['airplane single-engine-land', 'airplane, single-engine land'],
  ['airplane single-engine-sea', 'airplane, single-engine sea'],
  ['airplane multi-engine-land', 'airplane, multi-engine land'],
  ['airplane multi-engine-sea', 'airplane, multi-engine sea'],
  ['rotorcraft helicopter', 'helicopter'],
  ['rotorcraft gyroplane', 'gyroplane'],
  ['glider none', 'glider'],
  ['lighter-than-air none', 'lighter than air'],
  ['powered-lift none', 'powered lift'],
];

export const ENCODINGS: Words = [
  ['utf-8', 'UTF-8'],
  ['windows-1252', 'Windows-1252'],
  ['utf-16le', 'UTF-16, low byte first'],
  ['utf-16be', 'UTF-16, high byte first'],
];
export const DELIMITERS: Words = [
  [',', 'commas'],
  [';', 'semicolons'],
  ['\t', 'tabs'],
];

/** '1 row', '2 rows'. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;
