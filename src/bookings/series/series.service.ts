import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { clubZone } from '../../clubs/club-time.js';
import { DecisionsService } from '../../decisions/decisions.service.js';
import { TenantDb } from '../../platform/database/tenant.js';
import { newId } from '../../platform/ids.js';
import { ProblemException } from '../../platform/problems/index.js';
import { type Booked, BookService } from '../book.service.js';
import { BookingDto } from '../booking.dto.js';
import type { BookingRow } from '../booking.entity.js';
import { noAircraft } from '../bookings.problems.js';
import { findBooking, lockAircraft, lockBooking, lockPeople } from '../bookings.sql.js';
import { CancelService, mayCancel } from '../changes/cancel.service.js';
import { notYours } from '../changes/changes.problems.js';
import { openBooking, type OpenBooking } from '../changes/changes.sql.js';
import { EditService, mayEdit } from '../changes/edit.service.js';
import { crewOf } from '../crew.js';
import type { StoredAnswer } from '../idempotency.js';
import { underKey, type Done } from '../keyed.js';
import { occurrencesOf, type Occurrence } from './occurrences.js';
import type {
  BookSeriesDto,
  CancelSeriesDto,
  EditSeriesDto,
  OccurrenceDto,
  SeriesDto,
} from './series.dto.js';
import { bookingsFrom, bookingsOf, findSeries, insertSeries } from './series.sql.js';
import { onItsDay } from './on-its-day.js';

/**
 * Books flights by one recurrence, and changes or gives back those that are left. Each flight is judged and booked alone, after those
 * before it, so hours promised to the first are counted for the next. One transaction holds the aircraft and the crew meanwhile.
 */
@Injectable()
export class SeriesService {
  constructor(
    private readonly db: TenantDb,
    private readonly decisions: DecisionsService,
    private readonly booker: BookService,
    private readonly edits: EditService,
    private readonly cancels: CancelService,
  ) {}

  book(user: SignedIn, key: string, asked: BookSeriesDto): Promise<StoredAnswer> {
    const { recurrence, whole = false, preview = false, ...flight } = asked;
    return underKey(this.db, user, key, {
      request: { series: asked },
      conflict: () => Promise.resolve(null),
      work: async (em) => {
        const memberId = this.decisions.mayAsk(user, flight);
        const zone = await clubZone(em, user.clubId);
        const all = occurrencesOf({ first: flight, recurrence, zone });
        if (!(await lockAircraft(em, flight.aircraftId))) throw noAircraft(flight.aircraftId);
        await lockPeople(em, crewOf({ ...flight, memberId }));
        const id = newId();
        return this.together(em, user, { id, recurrence, whole, preview }, async () => {
          const made = { madeBy: user.memberId, firstDeparts: all[0]!.departs };
          await insertSeries(em, { id, memberId, recurrence, zone, ...made });
          const done: OccurrenceDto[] = [];
          for (const times of all)
            done.push(
              await this.oneOf(times, user, () => this.booker.bookIn(em, user, { ...flight, ...times }, id)),
            );
          return done;
        });
      },
    });
  }

  /** The flights of a series as they stand. */
  find(user: SignedIn, id: string): Promise<SeriesDto> {
    return this.db.run(
      user.clubId,
      async (em) => {
        const series = await findSeries(em, id);
        const occurrences: OccurrenceDto[] = [];
        for (const bookingId of await bookingsOf(em, id)) {
          const row = (await findBooking(em, bookingId))!;
          const { departs, arrives } = row;
          occurrences.push({ departs, arrives, booking: BookingDto.from(row, user), problem: null });
        }
        return { id, recurrence: series.recurrence, preview: false, occurrences };
      },
      { readOnly: true },
    );
  }

  /** Changes a flight of a series and those after it, each alone. */
  edit(user: SignedIn, key: string, id: string, asked: EditSeriesDto): Promise<StoredAnswer> {
    const { fromBookingId, departsAt, lastsMinutes, whole = false, preview = false, ...edit } = asked;
    return underKey(this.db, user, key, {
      request: { editSeries: id, ...asked },
      conflict: () => Promise.resolve(null),
      work: async (em) => {
        const series = await findSeries(em, id);
        const ids = await bookingsFrom(em, { seriesId: id, fromBookingId });
        for (const bookingId of ids) {
          const { row } = await this.edits.lock(em, bookingId, edit);
          if (!mayEdit(user, row))
            throw notYours(
              'Not yours to change',
              'Whoever flies it, its instructor, or an officer changes a flight of a series.',
            );
        }
        const { recurrence } = series;
        return this.together(em, user, { id, recurrence, whole, preview }, async () => {
          const done: OccurrenceDto[] = [];
          // A flight that moves must not find the next one where it goes: those that move later are moved from the last on.
          const opened: OpenBooking[] = [];
          for (const one of ids) opened.push(await openBooking(em, one));
          const moved = opened.map((open) => ({
            open,
            times: onItsDay(open.row, { departsAt, lastsMinutes, zone: series.zone }),
          }));
          const later = moved[0]!.times.departs > moved[0]!.open.row.departs;
          for (const { open, times } of later ? [...moved].reverse() : moved)
            done.push(
              await this.oneOf(times, user, () =>
                this.edits.editIn(em, user, open, { ...edit, ...changed(open.row, times) }),
              ),
            );
          return done.sort((a, b) => (a.departs < b.departs ? -1 : 1));
        });
      },
    });
  }

  /** Gives back a flight of a series and those after it. */
  cancel(user: SignedIn, id: string, { fromBookingId, reason = '' }: CancelSeriesDto): Promise<SeriesDto> {
    return this.db.run(
      user.clubId,
      async (em) => {
        const series = await findSeries(em, id);
        const occurrences: OccurrenceDto[] = [];
        for (const bookingId of await bookingsFrom(em, { seriesId: id, fromBookingId })) {
          await lockBooking(em, bookingId);
          const row = (await findBooking(em, bookingId))!;
          // Somebody else gave it back since the series was read.
          if (row.status === 'cancelled') continue;
          if (!mayCancel(user, row))
            throw notYours('Not yours to cancel', 'Its holder, its crew, or an officer gives a flight back.');
          occurrences.push(
            await this.oneOf(row, user, async () => ({
              booking: await this.cancels.cancelIn(em, user, row, reason),
            })),
          );
        }
        const refused = occurrences.find(({ problem }) => problem !== null)?.problem;
        // Nothing given back and something wanting: the caller is told what, and not that it went well.
        if (refused && occurrences.every(({ booking }) => booking === null))
          throw new ProblemException(refused.code, { detail: refused.detail, field: 'reason' });
        return { id, recurrence: series.recurrence, preview: false, occurrences };
      },
      { actorId: user.memberId },
    );
  }

  /** Does the flights, and undoes them where only looked at or where all were wanted and one was refused. */
  private async together(
    em: EntityManager,
    user: SignedIn,
    of: { id: string; recurrence: string; whole: boolean; preview: boolean },
    work: () => Promise<OccurrenceDto[]>,
  ): Promise<Done> {
    await em.query('SAVEPOINT series');
    const occurrences = await work();
    const refused = occurrences.filter(({ problem }) => problem !== null).length;
    const { id, recurrence, whole, preview } = of;
    const none = refused === occurrences.length;
    if (preview || none || (whole && refused > 0)) await em.query('ROLLBACK TO SAVEPOINT series');
    // What was undone has no id that anybody could look up.
    const shown = preview ? occurrences.map((one) => ({ ...one, booking: null })) : occurrences;
    const body: SeriesDto = { id: preview ? null : id, recurrence, preview, occurrences: shown };
    if (preview) return { status: 200, body };
    if (!none && !(whole && refused > 0)) return { status: 200, body };
    const told = occurrences.map((one) => ({ ...one, booking: null }));
    const detail =
      `${refused} of ${occurrences.length} flights cannot be had so; nothing was done. Each says what stands in its way.` +
      (none ? '' : ' Send whole: false for those that can be.');
    return { refused: new ProblemException('series-refused', { detail, extensions: { occurrences: told } }) };
  }

  private async oneOf(
    times: Occurrence,
    user: SignedIn,
    work: () => Promise<Booked>,
  ): Promise<OccurrenceDto> {
    const { departs, arrives } = times;
    const no = (problem: ProblemException): OccurrenceDto => {
      const { code, title, detail } = problem;
      return { departs, arrives, booking: null, problem: { code, title, detail } };
    };
    try {
      const done = await work();
      if ('refused' in done) return no(done.refused);
      return { departs, arrives, booking: BookingDto.from(done.booking, user), problem: null };
    } catch (error) {
      // Of this flight alone, and before anything was written for it. What is wrong with the request is wrong with all of them.
      if (error instanceof ProblemException && ofOneFlight(error)) return no(error);
      throw error;
    }
  }
}

const ofOneFlight = (problem: ProblemException): boolean => {
  const fields = problem.errors.map(({ field }) => field);
  const ofTimes = fields.length > 0 && fields.every((field) => field === 'departs' || field === 'arrives');
  return (
    problem.getStatus() === 409 ||
    ofTimes ||
    ['nothing-to-change', 'cancel-reason-missing'].includes(problem.code)
  );
};

/** Only times that are others are sent, so that a change of the crew alone is not taken for a change of the times. */
const changed = (row: BookingRow, times: Occurrence): Partial<Occurrence> =>
  row.departs === times.departs && row.arrives === times.arrives
    ? {}
    : { departs: times.departs, arrives: times.arrives };
