import type { EntityManager } from 'typeorm';
import { kindOf, type Delivery, type KindOfNotice } from '../outbox/kinds.js';
import { USUAL_HOURS, type Hours } from './when.js';

/** What a person wants. */
export interface Preferences extends Hours {
  choices: Partial<Record<KindOfNotice, Delivery>>;
  /** 0: nothing was ever chosen. */
  rowVersion: number;
}

/** A person's preferences; the usual ones where there are none. */
export async function preferencesOf(em: EntityManager, memberId: string): Promise<Preferences> {
  const [row]: Preferences[] = await em.query(
    `SELECT choices, to_char(quiet_from, 'HH24:MI') AS "quietFrom", to_char(quiet_to, 'HH24:MI') AS "quietTo",
        digest_hour AS "digestHour", row_version AS "rowVersion"
       FROM notice_preferences WHERE club_id = bellcrank_club() AND member_id = $1`,
    [memberId],
  );
  return row ?? { ...USUAL_HOURS, choices: {}, rowVersion: 0 };
}

/** Writes a person's preferences; the member is locked. */
export async function storePreferences(
  em: EntityManager,
  memberId: string,
  { choices, quietFrom, quietTo, digestHour }: Omit<Preferences, 'rowVersion'>,
): Promise<void> {
  await em.query(
    `INSERT INTO notice_preferences (club_id, member_id, choices, quiet_from, quiet_to, digest_hour)
     VALUES (bellcrank_club(), $1, $2::jsonb, $3::time, $4::time, $5)
     ON CONFLICT (club_id, member_id) DO UPDATE SET choices = excluded.choices, quiet_from = excluded.quiet_from,
       quiet_to = excluded.quiet_to, digest_hour = excluded.digest_hour`,
    [memberId, JSON.stringify(choices), quietFrom, quietTo, digestHour],
  );
}

/** How mail of a kind goes to a person. What may not be off goes, whatever was once chosen. */
export function deliveryOf({ choices }: Pick<Preferences, 'choices'>, kind: string): Delivery {
  const known = kindOf(kind);
  const chosen = choices[kind as KindOfNotice] ?? known?.delivery ?? 'daily';
  return chosen === 'off' && known !== null && !known.mayBeOff ? known.delivery : chosen;
}
