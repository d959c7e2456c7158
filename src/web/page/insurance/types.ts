/** What is asked of pilots who are not named, as the API tells it; hours. */
export interface Minimums {
  leastLevel: string | null;
  instrumentRating: boolean;
  leastAgeYears: number | null;
  mostAgeYears: number | null;
  totalH: number | null;
  classH: number | null;
  retractableH: number | null;
  tailwheelH: number | null;
  modelH: number | null;
  recentH: number | null;
  recentDays: number | null;
  checkoutInModel: boolean;
  dualInModelH: number | null;
  reviewMonths: number | null;
}

/** Insurance terms of an aircraft. */
export interface Terms {
  id: string;
  source: string;
  validFrom: string;
  validThrough: string;
  minimums: Minimums | null;
  namedPilotIds: string[];
  namedPilots: number;
  endedBecause: string | null;
  voidedAt: string | null;
}

type Figure = Exclude<keyof Minimums, 'leastLevel' | 'instrumentRating' | 'checkoutInModel'>;

/** Figures by what the form and the list call them; `says` completes the list of what is asked. */
export const FIGURES: [name: Figure, label: string, says: (figure: number, of: Minimums) => string][] = [
  ['totalH', 'Hours in all', (h) => `${h} h in all`],
  ['classH', 'Hours in category and class', (h) => `${h} h in the category and class`],
  ['retractableH', 'Hours with retractable gear', (h) => `${h} h with retractable gear`],
  ['tailwheelH', 'Hours in tailwheel aircraft', (h) => `${h} h in tailwheel aircraft`],
  ['modelH', 'Hours in make and model', (h) => `${h} h in the make and model`],
  ['dualInModelH', 'Hours of instruction in make and model', (h) => `${h} h of instruction in it`],
  ['recentH', 'Hours lately', (h, { recentDays }) => `${h} h in ${recentDays} days`],
  ['recentDays', '… within so many days', () => ''],
  ['reviewMonths', 'Flight review or club check within months', (n) => `a review within ${n} months`],
  ['leastAgeYears', 'Least age', (n) => `aged ${n} or more`],
  ['mostAgeYears', 'Greatest age', (n) => `aged ${n} or less`],
];

/** Everything that is asked, in words. */
export function asked(of: Minimums): string[] {
  return [
    ...(of.leastLevel === null ? [] : [`${of.leastLevel} pilot certificate or higher`]),
    ...(of.instrumentRating ? ['instrument rating'] : []),
    ...(of.checkoutInModel ? ['checkout in the model'] : []),
    ...FIGURES.flatMap(([name, , says]) => (of[name] === null ? [] : says(of[name], of) || [])),
  ];
}
