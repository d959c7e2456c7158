import { type EntityManager, In } from 'typeorm';
import { Airfield } from '../../clubs/airfields/airfield.entity.js';
import { show } from '../../platform/http/views.js';
import { latestReadings, meterViews } from '../meters/latest-readings.js';
import type { MeterReading } from '../meters/meter-reading.entity.js';
import { AircraftModel } from '../models/aircraft-model.entity.js';
import { ModelView } from '../models/model.dto.js';
import { OPEN_STATES } from '../squawks/squawk-states.js';
import { Squawk, type SquawkState } from '../squawks/squawk.entity.js';
import { AircraftSummary, AircraftView, type SquawkCounts } from './aircraft.dto.js';
import type { Aircraft } from './aircraft.entity.js';

interface Around {
  models: AircraftModel[];
  airfields: Airfield[];
  readings: MeterReading[];
  squawks: { aircraftId: string; state: SquawkState; count: string }[];
}

/** What the answers show beside the rows, with one query a table however many aircraft there are. */
async function around(em: EntityManager, clubId: string, aircraft: Aircraft[]): Promise<Around> {
  const ids = aircraft.map(({ id }) => id);
  const models = await em.findBy(AircraftModel, { clubId, id: In(aircraft.map(({ modelId }) => modelId)) });
  const airfields = await em.findBy(Airfield, {
    clubId,
    id: In(aircraft.map(({ homeAirfieldId }) => homeAirfieldId)),
  });
  const readings = await latestReadings(em, clubId, ids);
  const squawks = await em
    .createQueryBuilder(Squawk, 's')
    .select('s.aircraftId', 'aircraftId')
    .addSelect('s.state', 'state')
    .addSelect('count(*)', 'count')
    .where({ clubId, aircraftId: In(ids), state: In(OPEN_STATES) })
    .groupBy('s.aircraftId')
    .addGroupBy('s.state')
    .getRawMany<Around['squawks'][number]>();
  return { models, airfields, readings, squawks };
}

function shared(aircraft: Aircraft, { models, airfields, readings, squawks }: Around) {
  const model = models.find(({ id }) => id === aircraft.modelId)!;
  const count = (state: SquawkState): number =>
    Number(squawks.find((row) => row.aircraftId === aircraft.id && row.state === state)?.count ?? 0);
  const openSquawks: SquawkCounts = {
    reported: count('reported'),
    grounding: count('grounding'),
    deferred: count('deferred'),
  };
  const homeAirfieldCode = airfields.find(({ id }) => id === aircraft.homeAirfieldId)!.code;
  return { model, homeAirfieldCode, openSquawks, meters: meterViews(aircraft, readings) };
}

/** Aircraft for a list. */
export async function aircraftSummaries(
  em: EntityManager,
  clubId: string,
  rows: Aircraft[],
): Promise<AircraftSummary[]> {
  if (rows.length === 0) return [];
  const beside = await around(em, clubId, rows);
  return rows.map((row) => {
    const { model, ...more } = shared(row, beside);
    return show(AircraftSummary, row, {
      ...more,
      makeModel: model.makeModel,
      typeDesignator: model.typeDesignator,
    });
  });
}

/** One aircraft with its model. */
export async function aircraftView(em: EntityManager, row: Aircraft): Promise<AircraftView> {
  const { model, ...more } = shared(row, await around(em, row.clubId, [row]));
  return show(AircraftView, row, { ...more, model: show(ModelView, model) });
}
