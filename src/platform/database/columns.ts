/**
 * How the columns of Bellcrank's tables are read and written, the same in every entity:
 * `timestamptz` leaves as RFC 3339 in UTC with whole seconds, `date` stays 'YYYY-MM-DD', hours stay integer tenths.
 */
import { Column, type ColumnOptions, PrimaryColumn, type ValueTransformer } from 'typeorm';

/** `timestamptz` as 'YYYY-MM-DDTHH:MM:SSZ'; fractions of a second, which only the database makes, are cut off. */
export const instantTransformer: ValueTransformer = {
  to: (value: unknown) => value,
  from: (value: Date | string | null) =>
    value === null || value === undefined ? value : `${new Date(value).toISOString().slice(0, 19)}Z`,
};

/** A `timestamptz` column. */
export const InstantColumn = (name: string, options: ColumnOptions = {}): PropertyDecorator =>
  Column({ ...options, name, type: 'timestamptz', transformer: instantTransformer });

/** A `date` column: a calendar date as 'YYYY-MM-DD' on both sides. */
export const DateColumn = (name: string, options: ColumnOptions = {}): PropertyDecorator =>
  Column({ ...options, name, type: 'date' });

/** A `text` column. */
export const TextColumn = (name: string, options: ColumnOptions = {}): PropertyDecorator =>
  Column({ ...options, name, type: 'text' });

/** An `integer` (or `smallint`) column. */
export const IntegerColumn = (name: string, options: ColumnOptions = {}): PropertyDecorator =>
  Column({ ...options, name, type: 'integer' });

/** A `double precision` column. */
export const RealColumn = (name: string, options: ColumnOptions = {}): PropertyDecorator =>
  Column({ ...options, name, type: 'double precision' });

/** A `boolean` column. */
export const FlagColumn = (name: string, options: ColumnOptions = {}): PropertyDecorator =>
  Column({ ...options, name, type: 'boolean' });

/** A `text[]` column. */
export const TextListColumn = (name: string, options: ColumnOptions = {}): PropertyDecorator =>
  Column({ ...options, name, type: 'text', array: true });

/** The key every table of a club shares. */
export abstract class ClubRow {
  @PrimaryColumn({ name: 'club_id', type: 'uuid' })
  clubId: string;

  @PrimaryColumn({ name: 'id', type: 'uuid' })
  id: string;
}

/** A club's row with the instant it was written, which the database says. */
export abstract class RecordedRow extends ClubRow {
  @InstantColumn('recorded_at', { insert: false, update: false })
  recordedAt: string;
}

/** A row that may be edited: the database counts its edits, and ETags are made of the count. */
export abstract class FactRow extends RecordedRow {
  @Column({ name: 'row_version', type: 'integer', insert: false, update: false })
  rowVersion: number;
}
