import { Entity } from 'typeorm';
import { FactRow, IntegerColumn, RealColumn, TextColumn } from '../../platform/database/columns.js';

/** An airfield the club flies from or to. */
@Entity('airfields')
export class Airfield extends FactRow {
  @TextColumn('code')
  code: string;

  @TextColumn('name')
  name: string;

  /** WGS 84, north positive. */
  @RealColumn('latitude_deg')
  latitudeDeg: number;

  /** WGS 84, east positive. */
  @RealColumn('longitude_deg')
  longitudeDeg: number;

  /** Above mean sea level. */
  @IntegerColumn('elevation_ft')
  elevationFt: number;

  /** IANA zone of the place. */
  @TextColumn('zone')
  zone: string;
}
