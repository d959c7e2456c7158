import {
  byFit,
  localDateOf,
  Prices,
  rulesetFor,
  toSeconds,
  type FactSheet,
  type Fit,
  type Instant,
  type Judged,
  type Jurisdiction,
  type Policy,
} from '../../rules/index.js';

/** The club's numbers on the club's own day; one that was never set is what a new club starts with. */
export const sharingNumbers = (of: {
  policy: Policy;
  jurisdiction: Jurisdiction;
  zone: string;
  now: Instant;
}): Prices =>
  new Prices(rulesetFor(of.jurisdiction, of.policy).book, localDateOf(toSeconds(of.now), of.zone));

/** Judged aircraft in order of fit by the club's policy. `sheets` is the whole fleet: what is scarce is counted over it. */
export function bestFirst(
  judged: readonly Judged[],
  of: { sheets: readonly FactSheet[]; policy: Policy; now: Instant },
): Fit[] {
  const [any] = of.sheets;
  if (!any) return [];
  const numbers = sharingNumbers({ ...of, jurisdiction: any.jurisdiction, zone: any.zone });
  return byFit(judged, {
    fleet: of.sheets.map(({ aircraft }) => aircraft),
    prices: {
      condition: numbers.number('club.fit.condition'),
      emptySeat: numbers.number('club.fit.empty-seat'),
      scarceFeature: numbers.number('club.fit.scarce-feature'),
      oddHour: numbers.number('club.fit.odd-hour'),
    },
  });
}
