import { Injectable } from '@nestjs/common';
import { sha256 } from '../../platform/sha256.js';
import { type EntityManager, IsNull } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { answerOnce, type StoredAnswer } from '../../bookings/idempotency.js';
import { clubToday, clubZone } from '../../clubs/club-time.js';
import { settle, viewOf } from '../../logbook/log-rows.js';
import type { LogEntryDto } from '../../logbook/log.dto.js';
import { LogEntry } from '../../logbook/log-entry.entity.js';
import { MEMBERS } from '../../members/member-rows.js';
import { assertOwnOr } from '../../members/members.access.js';
import { Clock } from '../../platform/clock.js';
import { addRecord, findRecord } from '../../platform/database/records.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { ProblemException } from '../../platform/problems/problem-exception.js';
import { valueRefused } from '../../platform/problems/value-refused.js';
import { toSeconds } from '../../rules/index.js';
import { addPractice, viewsOf } from '../records/practice-rows.js';
import type { PracticeRecord } from '../records/practice-record.entity.js';
import type { TrackAirfield } from '../track/index.js';
import { readApart, TrackTooSlow } from './read-apart.js';
import type { TrackFile } from './read-file.js';
import type { ConfirmedTrackView, ConfirmTrackDto, TrackReadingView } from './track.dto.js';
import { trackMissing, trackTooSlow, trackUnreadable } from './track.problems.js';
import { readingView } from './track-views.js';

const ENTRIES = { entity: LogEntry, noun: 'log entry' };

/** Reads recorded tracks for their pilots, and enters what they confirm. */
@Injectable()
export class TrackService {
  constructor(
    private readonly tenants: TenantDb,
    private readonly clock: Clock,
  ) {}

  /** What a track shows. Nothing is stored. @throws 403, 404, 422 naming the lines at fault */
  async read(by: SignedIn, memberId: string, content: Buffer | undefined): Promise<TrackReadingView> {
    assertOwnOr(by, memberId, ['administrator']);
    const { clubId } = by;
    const known = await this.tenants.run(
      clubId,
      async (em) => {
        await findRecord(em, MEMBERS, { clubId, id: memberId });
        return { zone: await clubZone(em, clubId), airfields: await airfieldsOf(em, clubId) };
      },
      { readOnly: true },
    );
    if (content === undefined || content.length === 0) throw trackMissing();
    const trackSha256 = sha256(content);
    const file = await this.readFile(content, known.airfields);
    const { onRecord, loggedAlready } = await this.tenants.run(
      clubId,
      async (em) => ({
        onRecord: await eventsOnRecord(em, { clubId, memberId, trackSha256 }),
        loggedAlready: await flightAt(em, { clubId, memberId, from: file.fromSeconds, to: file.toSeconds }),
      }),
      { readOnly: true },
    );
    return readingView({ file, trackSha256, ...known, onRecord, loggedAlready });
  }

  private async readFile(
    content: Buffer,
    airfields: TrackAirfield[],
  ): Promise<Extract<TrackFile, { ok: true }>> {
    const file = await readApart({ text: content.toString('utf8'), airfields }).catch((error: unknown) => {
      throw error instanceof TrackTooSlow ? trackTooSlow() : error;
    });
    if (!file.ok) throw trackUnreadable(file.problems);
    return file;
  }

  /**
   * Enters what was chosen, all of it or nothing, or gives the stored answer of an earlier request with the same key.
   * @throws 403, 404, 409 where the time is logged or an event taken over already, 422
   */
  confirm(by: SignedIn, key: string, memberId: string, body: ConfirmTrackDto): Promise<StoredAnswer> {
    assertOwnOr(by, memberId, ['administrator']);
    const work = async (em: EntityManager): Promise<StoredAnswer> => {
      // Confirmations for one member queue here, so that a flight is not logged twice.
      await findRecord(em, MEMBERS, { clubId: by.clubId, id: memberId }, { lock: true });
      const request = { track: memberId, ...body };
      return answerOnce(em, { memberId: by.memberId, key, request }, async () => ({
        status: 201,
        body: await this.enter(em, by, memberId, body),
      }));
    };
    return this.tenants.run(by.clubId, work, { actorId: by.memberId });
  }

  private async enter(
    em: EntityManager,
    by: SignedIn,
    memberId: string,
    { trackSha256, log, logEntryId, practice }: ConfirmTrackDto,
  ): Promise<ConfirmedTrackView> {
    const { clubId } = by;
    if (!log && practice.length === 0)
      throw valueRefused('practice', 'Nothing was chosen. Choose the flight, or at least one manoeuvre.');
    if (log && logEntryId)
      throw valueRefused('logEntryId', 'Log the flight or name the one in the log, not both.');
    if (logEntryId && (await flightById(em, clubId, memberId, logEntryId)) === null)
      throw valueRefused('logEntryId', 'The member’s log has no such flight.');
    const now = this.clock.now();
    const today = await clubToday(em, clubId, now);
    const entry = log ? await this.logFlight(em, clubId, memberId, log) : null;
    const rows: PracticeRecord[] = [];
    for (const [index, { event, ...record }] of practice.entries()) {
      const flight = entry?.id ?? logEntryId ?? record.logEntryId ?? null;
      rows.push(
        await addPractice(
          em,
          { ...record, logEntryId: flight },
          {
            ...{ clubId, memberId, recordedBy: by.memberId, instructorId: null, today },
            ...{ track: { trackSha256, trackEvent: event }, at: `practice[${index}].` },
          },
        ),
      );
    }
    return { log: entry && viewOf(entry), practice: await viewsOf(em, rows) };
  }

  private async logFlight(
    em: EntityManager,
    clubId: string,
    memberId: string,
    log: LogEntryDto,
  ): Promise<LogEntry> {
    const values = await settle(em, clubId, log, this.clock.now());
    const span = { from: toSeconds(values.departedAt), to: toSeconds(values.arrivedAt) };
    const there = await flightAt(em, { clubId, memberId, ...span });
    if (there !== null) throw new ProblemException('flight-logged-already', { field: 'log.departedAt' });
    return addRecord(em, ENTRIES, { ...values, clubId, memberId });
  }
}

async function airfieldsOf(em: EntityManager, clubId: string): Promise<TrackAirfield[]> {
  return em.query<TrackAirfield[]>(
    `SELECT a.code, a.latitude_deg AS "latitudeDeg", a.longitude_deg AS "longitudeDeg", a.elevation_ft AS "elevationFt",
            coalesce((SELECT jsonb_agg(jsonb_build_object('designator', r.designator, 'trueHeadingDeg', r.true_heading_deg,
              'lengthFt', r.length_ft) ORDER BY r.designator) FROM runways r
              WHERE r.club_id = a.club_id AND r.airfield_id = a.id), '[]'::jsonb) AS runways
       FROM airfields a WHERE a.club_id = $1 ORDER BY a.code`,
    [clubId],
  );
}

async function eventsOnRecord(
  em: EntityManager,
  of: { clubId: string; memberId: string; trackSha256: string },
): Promise<ReadonlySet<string>> {
  const rows = await em.query<{ event: string }[]>(
    `SELECT track_event AS event FROM practice_records WHERE club_id = $1 AND member_id = $2 AND track_sha256 = $3`,
    [of.clubId, of.memberId, of.trackSha256],
  );
  return new Set(rows.map(({ event }) => event));
}

async function flightById(
  em: EntityManager,
  clubId: string,
  memberId: string,
  id: string,
): Promise<LogEntry | null> {
  return em.findOneBy(LogEntry, { clubId, memberId, id, voidedAt: IsNull() });
}

/** A flight of the member's log that shares time with a span of seconds. */
async function flightAt(
  em: EntityManager,
  of: { clubId: string; memberId: string; from: number; to: number },
): Promise<string | null> {
  const [row] = await em.query<{ id: string }[]>(
    `SELECT id FROM log_entries WHERE club_id = $1 AND member_id = $2 AND voided_at IS NULL AND times_known
        AND departed_at < to_timestamp($4) AND arrived_at > to_timestamp($3) ORDER BY departed_at LIMIT 1`,
    [of.clubId, of.memberId, of.from, of.to],
  );
  return row?.id ?? null;
}
