import { Airfield } from './airfields/airfield.entity.js';
import { Runway } from './airfields/runway.entity.js';
import { Club } from './club.entity.js';
import { PolicyValueRow } from './policy/policy-value.entity.js';
import { ClubRuleDryRunRow, ClubRuleRow } from './rules/club-rule.entity.js';

/** The tables of this domain. */
export const CLUB_ENTITIES = [Club, Airfield, Runway, PolicyValueRow, ClubRuleRow, ClubRuleDryRunRow];
