/** The pure heart of Bellcrank. The rest of the service imports the rules from here and nowhere deeper. */
export * from './calendar/dates.js';
export * from './calendar/instants.js';
export * from './facts/fact.js';
export * from './facts/flight.js';
export * from './facts/weather.js';
export * from './facts/person.js';
export * from './facts/aircraft.js';
export * from './facts/loading.js';
export * from './facts/insurance.js';
export * from './facts/sheet.js';
export * from './facts/club-rule.js';
export * from './facts/keys.js';
export * from './engine/crew.js';
export * from './engine/finding.js';
export * from './engine/rule.js';
export * from './engine/remedy.js';
export * from './engine/parameters.js';
export * from './engine/digest.js';
export * from './engine/judge.js';
export * from './engine/combine.js';
export * from './engine/decide.js';
export * from './engine/weigh.js';
export * from './engine/stand.js';
export * from './engine/timeline.js';
export * from './engine/club-timeline.js';
export { stepsOf, type VerdictStep, type VerdictSteps } from './engine/follow.js';
export type { HorizonLimits } from './engine/horizon.js';
export * from './parameters/parameter.js';
export * from './sky/nights.js';
export { sunTimes } from './sky/sun.js';
export { armsAt, categoriesOf, envelopeFaults } from './air/envelope.js';
export { distanceFaults } from './air/field-length.js';
export { distanceNm } from './air/distance.js';
export * from './packs/index.js';
export * from './judge.js';
export * from './versions/law-book.js';
export * from './versions/as-then.js';
export * from './versions/release.js';
export * from './club-rules/index.js';
export {
  duesByItems,
  duesUnder14Cfr,
  hundredHourOverrunOn,
  hundredHoursOn,
  type ItemDue,
} from './packs/us/aircraft/inspections/dues.js';
export {
  workLoading,
  type LoadingWork,
  type WorkedLine,
  type WorkedPoint,
  type WorkedRunway,
} from './packs/common/loading/worked.js';
export { withReports } from './weather/declared.js';
export { conditionWords } from './weather/worst.js';
export {
  workWeather,
  type FieldWeather,
  type RunwayComponents,
  type WindOnRunways,
  type ShownReport,
  type WeatherWork,
  type WorkedPhase,
} from './weather/worked.js';
export { papersHold, type Hold, type PaperHold } from './papers-hold/index.js';
export { Prices } from './ways/prices.js';
export { startingPolicy } from './packs/club/starting-policy.js';
export { byFit, type Fit, type FitPart, type FitPrices, type Judged } from './fit/fit.js';
export { FEATURES, type Feature } from './fit/features.js';
export { hoursOn, windowsBetween } from './packs/club/booking/teaching-windows.js';
