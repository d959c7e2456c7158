import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../../accounts/current-user.js';
import type { StoredAnswer } from '../../../bookings/idempotency.js';
import { underKey } from '../../../bookings/keyed.js';
import { withBookingEffects } from '../../../bookings/standing-answers.js';
import { clubZone } from '../../../clubs/club-time.js';
import { AIRCRAFT } from '../../../fleet/aircraft/aircraft.records.js';
import type { Aircraft } from '../../../fleet/aircraft/aircraft.entity.js';
import { MetersService } from '../../../fleet/meters/meters.service.js';
import { takeUpDirectives } from '../../../fleet/directives/take-up.js';
import { Clock } from '../../../platform/clock.js';
import { findRecord } from '../../../platform/database/records.js';
import { TenantDb } from '../../../platform/database/tenant.js';
import { CAUTION, digestOf, localDateOf, toSeconds, type LocalDate } from '../../../rules/index.js';
import { previewStale } from '../../equipment-changes/equipment-changes.problems.js';
import type { StatusItem } from '../status.dto.js';
import { statusOf } from '../status.service.js';
import type {
  ImportCounts,
  ImportResult,
  ImportRow,
  StatusImport,
  StatusImportToWrite,
} from './import.dto.js';
import { rowsRefused } from './import.problems.js';
import { type FileRow, type ImportedFile, type OtherRow, readFile } from './read-file.js';
import type { Place, Written } from './place.js';
import { ORDER, writeRow } from './write-rows.js';

interface RowDone {
  row: FileRow;
  done: Written;
}

/** Takes over an aircraft's existing status from a file: looked at first, then whole or not at all, in one transaction. */
@Injectable()
export class StatusImportService {
  constructor(
    private readonly db: TenantDb,
    private readonly clock: Clock,
    private readonly meters: MetersService,
  ) {}

  /** What the import would do, found out by doing it and undoing it. Nothing is kept. */
  preview(user: SignedIn, aircraftId: string, body: StatusImport): Promise<ImportResult> {
    return this.db.run(user.clubId, (em) => this.work(em, user, aircraftId, body), {
      actorId: user.memberId,
      rehearse: true,
    });
  }

  /**
   * Takes it over, or gives the stored answer of an earlier request with the same key.
   * @throws ProblemException 422 naming every row in the way; 409 when it is not what its preview showed.
   */
  take(user: SignedIn, key: string, aircraftId: string, body: StatusImportToWrite): Promise<StoredAnswer> {
    const work = async (em: EntityManager): Promise<{ status: number; body: ImportResult }> => {
      const { preview, ...file } = body;
      const result = await this.work(em, user, aircraftId, file);
      const inTheWay = result.rows.filter(({ outcome }) => outcome === 'refused');
      if (inTheWay.length > 0)
        throw rowsRefused(inTheWay.map(({ line, because }) => ({ line, because: because ?? '' })));
      if (preview !== result.preview) throw previewStale();
      return { status: 201, body: result };
    };
    return underKey(this.db, user, key, { request: { import: aircraftId, ...body }, work });
  }

  private async work(
    em: EntityManager,
    user: SignedIn,
    aircraftId: string,
    body: StatusImport,
  ): Promise<ImportResult> {
    const { clubId } = user;
    const now = this.clock.now();
    const aircraft = await findRecord(em, AIRCRAFT, { clubId, id: aircraftId }, { lock: true });
    const { csv, section, dates = 'year-first' } = body;
    const zone = await clubZone(em, clubId);
    const file = readFile({ csv, section, dates, zone });
    const place: Place = {
      ...{ em, meters: this.meters, clubId, aircraftId, zone },
      ...{ inspectionMeter: aircraft.inspectionMeter, taken: new Set<string>(), known: {} },
      today: localDateOf(toSeconds(now), zone),
    };
    const { result, bookings, changed } = await withBookingEffects(
      em,
      { aircraftIds: [aircraftId], now },
      async () => {
        const done = await writeAll(place, file.rows);
        // Pieces that came in may have directives of their own.
        await takeUpDirectives(em, clubId, { aircraftIds: [aircraftId], today: place.today });
        return done;
      },
    );
    const { status } = await statusOf(em, { user, aircraftId, now });
    const rows = [
      ...result.map((one) => rowView(one, [...status.items, ...status.directives])),
      ...file.others.map((other) => otherView(other, aircraft, place.today)),
    ].sort((a, b) => a.line - b.line);
    const told = {
      ...{ columns: columnsTold(file), dates: DATES_READ[dates], rows, counts: countsOf(rows) },
      ...{ bookingsJudged: bookings, bookings: changed },
    };
    return { preview: digestOf({ aircraftId, csv, ...told }), ...told, caution: CAUTION };
  }
}

async function writeAll(place: Place, rows: readonly FileRow[]): Promise<RowDone[]> {
  const all: RowDone[] = [];
  for (const section of ORDER)
    for (const row of rows) if (row.section === section) all.push({ row, done: await writeRow(place, row) });
  return all;
}

const DATES_READ = {
  'year-first': 'Year, month, day, or with the month in letters. Anything else is refused.',
  'day-first': 'Day, month, year where there are strokes or points.',
  'month-first': 'Month, day, year where there are strokes or points.',
} as const;

const columnsTold = ({ columns }: ImportedFile) => columns.map((column) => ({ ...column }));

function rowView({ row, done }: RowDone, items: readonly StatusItem[]): ImportRow {
  const { values, section, line } = row;
  const title = [values['title'], values['reference'], values['kind']].find((one) => typeof one === 'string');
  return {
    ...{ line, section, title: typeof title === 'string' ? title : section },
    ...{ outcome: done.outcome, writes: done.writes, because: done.because },
    warnings: [
      ...done.warnings,
      ...dueWarnings(
        row,
        items.find(({ id }) => id === done.id),
      ),
    ],
  };
}

/** What the file says of next times, held against what the records say once the row is among them. */
function dueWarnings({ values }: FileRow, item: StatusItem | undefined): string[] {
  if (!item) return [];
  const { next_due_on: on, next_due_h: hours } = values;
  const told = (what: string, here: string, file: string): string =>
    `The file says next due ${what} ${file}; by the records it is ${here}. Find out which is right before relying on either.`;
  return [
    ...(on !== undefined && on !== item.nextDueOn
      ? [told('on', item.nextDueOn ?? 'due by no date', String(on))]
      : []),
    ...(typeof hours === 'number' && hours !== item.nextDueH
      ? [told('at', item.nextDueH === null ? 'due by no hours' : `${item.nextDueH} h`, `${hours} h`)]
      : []),
  ];
}

const LEFT_OUT: Record<string, string> = {
  squawk: 'Squawks are not taken over: have what is still wrong reported and judged.',
  aircraft: 'What the aircraft is stands with the aircraft.',
  caution: 'Cautions are worked out anew.',
};

function otherView(
  { line, section, values }: OtherRow,
  { registration }: Aircraft,
  today: LocalDate,
): ImportRow {
  const of = values['registration'];
  const asOf = values['as_of'] ?? '';
  const known = Object.hasOwn(LEFT_OUT, section);
  return {
    ...{ line, section: section.slice(0, 40), title: (values['title'] || of || section).slice(0, 200) },
    ...{ outcome: known ? ('left-out' as const) : ('refused' as const), writes: [] },
    warnings: section === 'aircraft' ? aboutFile({ of, asOf, registration, today }) : [],
    because: known
      ? LEFT_OUT[section]!
      : `There is no section “${section.slice(0, 40)}”: meter, equipment, weight, item or directive.`,
  };
}

/** Whose the file is, and of when. */
function aboutFile(file: { of?: string; asOf: string; registration: string; today: LocalDate }): string[] {
  const { of, asOf, registration, today } = file;
  const older = /^\d{4}-\d{2}-\d{2}$/.test(asOf) && asOf < today;
  return [
    ...(of && of !== registration
      ? [`The file is of ${of.slice(0, 40)}; it would be taken over for ${registration}.`]
      : []),
    ...(older ? [`The file is of ${asOf}: what was done, read or found since then is not in it.`] : []),
  ];
}

function countsOf(rows: readonly ImportRow[]): ImportCounts {
  const count = (outcome: ImportRow['outcome']): number =>
    rows.filter((row) => row.outcome === outcome).length;
  return {
    ...{ added: count('added'), doneAgain: count('done-again'), unchanged: count('unchanged') },
    ...{ leftOut: count('left-out'), refused: count('refused') },
  };
}
