import type { ComponentChildren } from 'preact';
import { Said } from '../parts/said.js';
import { momentIn } from '../parts/time.js';
import { Table } from './table.js';
import type { ImportResult, ImportRow } from './types.js';

const OUTCOMES: Record<ImportRow['outcome'], string> = {
  added: 'New',
  'done-again': 'Done again',
  unchanged: 'On record already',
  'left-out': 'Left out',
  refused: 'Refused',
};

/** What an import would write, row by row, and how the file was read. */
export function ImportPreview({
  of,
  zone,
  children,
}: {
  of: ImportResult;
  zone: string;
  children: ComponentChildren;
}) {
  const { counts } = of;
  return (
    <section class="import-preview" aria-label="What would be written">
      <p role="status">
        {counts.added} new, {counts.doneAgain} done again, {counts.unchanged} on record already,{' '}
        {counts.leftOut} left out, {counts.refused} refused.{' '}
        {counts.refused > 0 && <strong>Nothing can be taken over while a row is refused.</strong>}
      </p>
      <p>
        {of.bookings.length === 0
          ? `None of ${of.bookingsJudged} booked flights is answered otherwise.`
          : `Of ${of.bookingsJudged} booked flights, answered otherwise:`}
      </p>
      {of.bookings.length > 0 && (
        <ul class="bookings">
          {of.bookings.map((one) => (
            <li key={one.bookingId}>
              {one.memberName}, {momentIn(zone, one.departs)}: {one.before} becomes {one.after}
            </li>
          ))}
        </ul>
      )}
      <Table
        title="Rows"
        headings={['Line', 'Row', 'Becomes', 'Written', 'Look at']}
        rows={of.rows.map((row) => ({
          key: String(row.line),
          mark: row.outcome,
          cells: [
            String(row.line),
            <>
              {row.title} <small>{row.section}</small>
            </>,
            OUTCOMES[row.outcome],
            <Lines of={row.writes} zone={zone} none="nothing" />,
            <Lines
              of={[...(row.because === null ? [] : [row.because]), ...row.warnings]}
              zone={zone}
              none="nothing"
            />,
          ],
        }))}
      />
      <details>
        <summary>How the columns were read</summary>
        <p class="hint">Dates: {of.dates}</p>
        <Table
          title="Columns"
          headings={['Heading', 'Taken for', 'Unit', 'Note']}
          rows={of.columns.map((column, index) => ({
            key: String(index),
            cells: [
              column.heading || '(none)',
              column.fields.join(', ') || 'not taken over',
              column.unit ?? 'none',
              column.note ?? 'none',
            ],
          }))}
        />
      </details>
      <p class="caution">{of.caution}</p>
      {children}
    </section>
  );
}

function Lines({ of, zone, none }: { of: string[]; zone: string; none: string }) {
  if (of.length === 0) return <span class="none">{none}</span>;
  return (
    <ul>
      {of.map((says) => (
        <li key={says}>
          <Said text={says} zone={zone} />
        </li>
      ))}
    </ul>
  );
}
