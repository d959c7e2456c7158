/**
 * Until when each paper of a person holds, and for what, by the law of the club on a day. The same durations that the rules
 * use, from the same functions: nothing is reckoned a second time.
 */
import { type Instant, toSeconds } from '../calendar/instants.js';
import { Moment } from '../engine/moment.js';
import { Parameters } from '../engine/parameters.js';
import type { PersonFacts } from '../facts/person.js';
import type { Jurisdiction } from '../facts/sheet.js';
import { rulesetFor } from '../packs/index.js';
import { CA_HOLD_PARAMETERS, caPapersHold } from './ca.js';
import { EU_HOLD_PARAMETERS, euPapersHold } from './eu.js';
import type { PaperHold, Papers } from './hold.js';
import { US_HOLD_PARAMETERS, usPapersHold } from './us.js';

export type { Hold, PaperHold } from './hold.js';

const BY_COUNTRY: Record<Jurisdiction, { list: (of: Papers) => PaperHold[]; parameters: readonly string[] }> =
  {
    US: { list: usPapersHold, parameters: US_HOLD_PARAMETERS },
    EU: { list: euPapersHold, parameters: EU_HOLD_PARAMETERS },
    CA: { list: caPapersHold, parameters: CA_HOLD_PARAMETERS },
  };

/** @param of.at the instant whose law counts; what the law gives papers on other days may differ */
export function papersHold(
  person: PersonFacts,
  of: { jurisdiction: Jurisdiction; zone: string; at: Instant },
): PaperHold[] {
  const { list, parameters } = BY_COUNTRY[of.jurisdiction];
  const at = toSeconds(of.at);
  const moment = new Moment({ departs: at, durationSeconds: 0, knownAt: at, zone: of.zone });
  const { book } = rulesetFor(of.jurisdiction, NO_POLICY);
  return list({ person, moment, p: new Parameters(book, moment, parameters) });
}

/** The law's numbers alone. */
const NO_POLICY = { values: [] };
