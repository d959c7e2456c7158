import { ApiProperty } from '@nestjs/swagger';
import { NoteField, TextField, WordField } from '../../../platform/http/fields.js';
import { ChangedBookingView } from '../../equipment-changes/equipment-change-view.dto.js';
import { DATE_ORDERS, type DateOrder } from './cells.js';
import { SECTIONS, type Section } from './fields.js';

/** Characters of a file: as JSON it has to fit into a body. */
export const MOST_CHARACTERS = 120_000;

/** An existing status as a CSV file. */
export class StatusImport {
  @NoteField({
    max: MOST_CHARACTERS,
    description:
      'The file: one line of headings, parted by commas, semicolons or tabs; at most 500 rows. Headings as in the export, with or without units, and the usual other names',
  })
  csv: string;

  @WordField(SECTIONS, {
    optional: true,
    description: 'Of what section all rows are, where no column headed “section” says it',
  })
  section?: Section;

  @WordField(DATE_ORDERS, {
    optional: true,
    description:
      'How dates such as 09/03/2026 are to be read; refused unless given. 2026-03-09 and 9 Mar 2026 are always read',
  })
  dates?: DateOrder;
}

/** The same, to be written. */
export class StatusImportToWrite extends StatusImport {
  @TextField({
    max: 64,
    description: 'Of the preview that was looked at: refused when the import would do something else by now',
  })
  preview: string;
}

export class ImportColumn {
  @ApiProperty()
  heading: string;
  @ApiProperty({ type: [String], description: 'What it was taken for; empty: not taken over' })
  fields: string[];
  @ApiProperty({ type: String, nullable: true })
  unit: string | null;
  @ApiProperty({ type: String, nullable: true })
  note: string | null;
}

export const OUTCOMES = ['added', 'done-again', 'unchanged', 'left-out', 'refused'] as const;
export type Outcome = (typeof OUTCOMES)[number];

export class ImportRow {
  @ApiProperty({ type: 'integer', description: 'Line of the file, from 1' })
  line: number;
  @ApiProperty()
  section: string;
  @ApiProperty()
  title: string;
  @ApiProperty({
    enum: OUTCOMES,
    description:
      'added: a new record; done-again: a newer compliance of an item on record; unchanged: on record already; left-out: not taken over; refused: stands in the way of all',
  })
  outcome: Outcome;
  @ApiProperty({ type: [String], description: 'What is written' })
  writes: string[];
  @ApiProperty({ type: [String] })
  warnings: string[];
  @ApiProperty({ type: String, nullable: true, description: 'Why it is refused or left out' })
  because: string | null;
}

export class ImportCounts {
  @ApiProperty({ type: 'integer' })
  added: number;
  @ApiProperty({ type: 'integer' })
  doneAgain: number;
  @ApiProperty({ type: 'integer' })
  unchanged: number;
  @ApiProperty({ type: 'integer' })
  leftOut: number;
  @ApiProperty({ type: 'integer' })
  refused: number;
}

/** What an import does, or did. */
export class ImportResult {
  @ApiProperty({ description: 'Send it with the import: refused when it would do something else by then' })
  preview: string;
  @ApiProperty({ type: [ImportColumn] })
  columns: ImportColumn[];
  @ApiProperty({ description: 'How dates were read' })
  dates: string;
  @ApiProperty({ type: [ImportRow] })
  rows: ImportRow[];
  @ApiProperty({ type: ImportCounts })
  counts: ImportCounts;
  @ApiProperty({ type: 'integer', description: 'Flights booked on the aircraft, all judged anew' })
  bookingsJudged: number;
  @ApiProperty({ type: [ChangedBookingView], description: 'Those answered otherwise' })
  bookings: ChangedBookingView[];
  @ApiProperty({ description: 'The usual caution' })
  caution: string;
}
