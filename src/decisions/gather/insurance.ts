import { date, listFact, object } from './sql.js';

const NAMED = `(SELECT coalesce(jsonb_agg(p.member_id ORDER BY p.member_id), '[]'::jsonb) FROM insurance_named_pilots p
    WHERE p.club_id = t.club_id AND p.terms_id = t.id)`;

const RETRACTABLE = `(SELECT coalesce(jsonb_agg(x.id ORDER BY x.id), '[]'::jsonb) FROM aircraft_models x
    WHERE x.club_id = t.club_id AND x.retractable_gear AND t.minimums ->> 'retractableTenths' IS NOT NULL)`;

/** The terms an aircraft is insured on, over `aircraft a`. */
export const INSURANCE = listFact(
  object({
    id: 't.id',
    from: date('t.valid_from'),
    through: date('t.valid_through'),
    source: 't.source',
    namedPilotIds: NAMED,
    minimums: 't.minimums',
    retractableModelIds: RETRACTABLE,
  }),
  'insurance_terms t WHERE t.club_id = a.club_id AND t.aircraft_id = a.id AND t.voided_at IS NULL',
  't.valid_from, t.id',
);
