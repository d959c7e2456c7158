/** What entries about pilots' limits say of the flight in like words: endorsements, weather, light. */
import { plusSeconds, toInstant, type EndorsementFact, type EndorsementKind } from '../../../rules/index.js';
import { sunTimes } from '../../../rules/sky/sun.js';
import { ENDORSEMENT } from '../../../rules/workshop/records.js';
import type { NeutralFacts } from '../facts.js';
import type { Scene } from '../scene.js';

export const ON = '2027-03-01';
export const NOON = 12 * 60;
export const NIGHT = 22 * 60;

export const flagOf = (facts: NeutralFacts, ...keys: string[]): boolean | undefined =>
  facts.oneOf(keys, (key) => facts.flag(key));
export const numberOf = (facts: NeutralFacts, ...keys: string[]): number | undefined =>
  facts.oneOf(keys, (key) => facts.number(key));

export const endorsement = (
  kind: EndorsementKind,
  on: string,
  fields: Partial<EndorsementFact> = {},
): EndorsementFact => ({
  ...ENDORSEMENT,
  id: `endorsement-${kind}`,
  kind,
  on,
  ...fields,
});

/** Visibility of the flight, as weather declared for its departure. */
export function withVisibility(scene: Scene, visibilitySm: number | undefined): void {
  if (visibilitySm === undefined) return;
  scene.flight({
    weather: {
      observedAt: plusSeconds(scene.sheet.flight.departs, -600),
      windFromDeg: null,
      windKt: null,
      gustKt: null,
      visibilitySm,
      ceilingFtAgl: null,
      temperatureC: null,
      altimeterInHg: null,
    },
  });
}

/** What the entry says of the light: by night, or so many minutes from sunset at the home field. */
export function withLight(facts: NeutralFacts, scene: Scene, asOf: string): void {
  const after = facts.number('minutes_after_sunset');
  const before = facts.number('minutes_before_sunset');
  const risen = facts.number('minutes_before_sunrise');
  if (after === undefined && before === undefined && risen === undefined) return;
  const times = sunTimes(asOf, scene.sheet.flight.route[0]!, scene.zone);
  const edge = risen === undefined ? times.sunset! : times.sunrise!;
  scene.departAt(toInstant(edge + Math.round((after ?? -(before ?? risen!)) * 60)), 0);
}
