/** An invented club with one model, one airfield and one aircraft, made through the API by those who may. */
import { CLUB_ENTITIES } from '../../src/clubs/entities.js';
import { ClubsModule } from '../../src/clubs/clubs.module.js';
import { FLEET_ENTITIES } from '../../src/fleet/entities.js';
import { FleetModule } from '../../src/fleet/fleet.module.js';
import { type Api, type Session, startApi, type TestClub } from '../support/api.js';

/** Starts the service with clubs and fleet only. */
export const startFleetApi = (): Promise<Api> =>
  startApi({
    parts: { imports: [ClubsModule, FleetModule], entities: [...CLUB_ENTITIES, ...FLEET_ENTITIES] },
  });

/** Well-formed, and nobody's. */
export const NOBODY = '01900000-0000-7000-8000-000000000000';

export const AIRFIELD = {
  code: 'XLKF',
  name: 'Larkfield',
  latitudeDeg: 41.25,
  longitudeDeg: -93.5,
  elevationFt: 912,
  zone: 'America/Chicago',
};

export const MODEL = {
  makeModel: 'Wrenfield Sparrow 2',
  typeDesignator: 'WSP2',
  category: 'airplane',
  class: 'single-engine-land',
  engines: 1,
  powerPerEngineHp: 160,
  retractableGear: false,
  flaps: true,
  controllablePropeller: false,
  tailwheel: false,
  pressurised: false,
  maxTakeoffLb: 2400,
  vs1Kcas: 47.5,
  kindsOfOperation: ['day-vfr', 'night-vfr', 'ifr'],
};

/** Body of an aircraft, without what it refers to. */
export const AIRCRAFT_BODY = {
  registration: 'XB-101',
  seats: 4,
  occupantsCertificated: 4,
  certificatedAfter19960311: false,
  instructionForHire: true,
  carriesForHire: false,
  inspectionMeter: 'tachometer',
};

/** One person of each role that matters here, and the aircraft. */
export interface FleetScene {
  club: TestClub;
  administrator: Session;
  coordinator: Session;
  member: Session;
  airfieldId: string;
  modelId: string;
  aircraftId: string;
  /** '/aircraft/<id>' plus a path below it. */
  path(below?: string): string;
}

/** Builds the scene. */
export async function fleetScene(api: Api): Promise<FleetScene> {
  const club = await api.createClub();
  const administrator = await club.signInAs('administrator');
  const coordinator = await club.signInAs('maintenance-coordinator');
  const member = await club.signInAs('member');
  const id = async (path: string, body: object): Promise<string> =>
    ((await administrator.post(path, body).expect(201)).body as { id: string }).id;
  const airfieldId = await id('/airfields', AIRFIELD);
  const modelId = await id('/models', MODEL);
  const aircraftId = await id('/aircraft', { ...AIRCRAFT_BODY, modelId, homeAirfieldId: airfieldId });
  const people = { administrator, coordinator, member };
  return {
    club,
    ...people,
    airfieldId,
    modelId,
    aircraftId,
    path: (below = '') => `/aircraft/${aircraftId}${below}`,
  };
}

/** The problem's code and the field it names, for short assertions. */
export const problemOf = (response: { body: unknown }): { code: string; field?: string } => {
  const { code, errors } = response.body as { code: string; errors?: { field: string }[] };
  return errors?.[0] ? { code, field: errors[0].field } : { code };
};
