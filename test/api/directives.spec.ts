/** Directives over HTTP: previewed, taken up on aircraft and pieces, looked up, superseded; what flights are answered meanwhile. */
import { newId } from '../../src/platform/ids.js';
import { startApi, type Api } from '../support/api.js';
import { insertInto, readyClub, tomorrow, type ReadyClub } from '../support/ready-club.js';
import type { Session } from '../support/session.js';
import { problemOf } from './fleet-scene.js';

interface Standing {
  aircraftId: string;
  equipmentId: string | null;
  state: string;
  itemId: string | null;
  until: string | null;
}
interface Result {
  directive: { id: string; rowVersion: number; supersededBy: string | null };
  preview: string;
  standings: Standing[];
  bookingsJudged: number;
  bookings: { bookingId: string; after: string; because: { rule: string }[] }[];
}

describe('directives', () => {
  let api: Api;
  let ready: ReadyClub;
  let coordinator: Session;

  beforeAll(async () => {
    api = await startApi();
  }, 60_000);
  beforeEach(async () => {
    ready = await readyClub(api);
    coordinator = await ready.club.signInAs('maintenance-coordinator');
  });
  afterAll(() => api.stop());

  const text = (more: object = {}) => ({
    ...{ issuer: 'FAA', number: `2026-${newId().slice(-4)}`, title: 'Seat rails', effectiveOn: '2026-02-01' },
    ...{ appliesTo: 'aircraft', modelIds: [ready.modelId], scope: 'all', recurring: true, intervalH: 100 },
    ...more,
  });
  const add = async (more: object = {}): Promise<Result> =>
    (await coordinator.post('/directives', text(more)).expect(201)).body as Result;
  const ofAircraft = async (): Promise<Standing[]> =>
    (await ready.member.get(`/aircraft/${ready.aircraftId}/directives`).expect(200)).body.items;
  const ask = async (more: object = {}) => {
    const question = {
      ...tomorrow,
      purpose: 'solo',
      personsOnBoard: 1,
      aircraftIds: [ready.aircraftId],
      ...more,
    };
    const { body } = await ready.member.post('/decisions', question).expect(200);
    const [decision] = body.decisions;
    return decision.findings.find(({ rule }: { rule: string }) => rule === 'ad.recurring') as {
      status: string;
      says: string;
    };
  };
  const comply = (itemId: string, more: object = {}) =>
    coordinator
      .post(`/aircraft/${ready.aircraftId}/items/${itemId}/compliances`, {
        ...{
          doneOn: '2026-03-09',
          doneH: 1050,
          statement: 'Rails inspected',
          signedBy: 'Mo Wrench',
          ...more,
        },
      })
      .expect(201);

  it('is previewed with the flights it stops, and due before the next flight until complied with', async () => {
    const booked = await ready.member
      .post('/bookings', { ...tomorrow, purpose: 'solo', personsOnBoard: 1, aircraftId: ready.aircraftId })
      .set('Idempotency-Key', newId())
      .expect(201);
    const body = text();
    const shown = (await coordinator.post('/directives/preview', body).expect(200)).body as Result;
    expect(shown).toMatchObject({
      standings: [{ aircraftId: ready.aircraftId, equipmentId: null, state: 'applies' }],
      bookingsJudged: 1,
      bookings: [{ bookingId: booked.body.id, after: 'no', because: [{ rule: 'ad.recurring' }] }],
    });
    expect((await coordinator.get('/directives').expect(200)).body.items).toEqual([]);
    const made = (await coordinator.post(`/directives?preview=${shown.preview}`, body).expect(201))
      .body as Result;
    expect(made.preview).toBe(shown.preview);
    expect(
      problemOf(await coordinator.post('/directives?preview=old', text({ number: 'another' })).expect(409))
        .code,
    ).toBe('preview-stale');
    expect(await ask()).toMatchObject({ status: 'short' });
    await comply(made.standings[0]!.itemId!);
    expect(await ask()).toMatchObject({ status: 'met' });
    expect(await ofAircraft()).toMatchObject([{ state: 'applies', lastDoneOn: '2026-03-09' }]);
  });

  it('gives the time it gives for the first compliance: days, or hours from here', async () => {
    await add({ withinDays: 60 });
    // 2026-02-01 and 60 days: 2026-04-02.
    expect(await ask()).toMatchObject({ status: 'met' });
    await add({ withinH: 0.5 });
    expect(await ask({ arrives: '2026-03-11T18:30:00Z' })).toMatchObject({ status: 'met' });
    expect(await ask()).toMatchObject({
      status: 'short',
      says: expect.stringContaining('1050.5 h') as string,
    });
  });

  it('counts where the serial number is not on record, until it is, or somebody has looked', async () => {
    const { standings, directive } = await add({ serials: [{ from: 'HL-1001', through: 'HL-1100' }] });
    expect(standings).toMatchObject([{ state: 'unclear' }]);
    expect((await ask()).says).toContain('look up whether it applies');
    const aircraft = await coordinator.get(`/aircraft/${ready.aircraftId}`).expect(200);
    const edited = await coordinator
      .patch(`/aircraft/${ready.aircraftId}`, { serialNumber: 'HL-1101' }, `"${aircraft.body.rowVersion}"`)
      .expect(200);
    expect(await ofAircraft()).toMatchObject([{ state: 'not', itemId: null }]);
    expect(await ask()).toMatchObject({ status: 'not-applicable' });
    // Entered wrong: it comes back, with its item.
    await coordinator
      .patch(`/aircraft/${ready.aircraftId}`, { serialNumber: 'HL-1042' }, `"${edited.body.rowVersion}"`)
      .expect(200);
    expect(await ask()).toMatchObject({ status: 'short' });
    const path = `/aircraft/${ready.aircraftId}/directives/${directive.id}/findings`;
    const finding = {
      applies: false,
      because: 'Rails replaced by the later part',
      signedBy: 'Mo Wrench, 0042',
    };
    const found = (await coordinator.post(path, finding).expect(201)).body as Result;
    expect(found.standings).toMatchObject([
      { state: 'not', because: 'Rails replaced by the later part (Mo Wrench, 0042)' },
    ]);
    expect(await ask()).toMatchObject({ status: 'not-applicable' });
    await coordinator
      .post(path, { ...finding, applies: true, because: 'The wrong rails after all' })
      .expect(201);
    expect(await ask()).toMatchObject({ status: 'short' });
    expect(problemOf(await coordinator.post(path, { ...finding, because: 'no' }).expect(400)).field).toBe(
      'because',
    );
  });

  it('goes with the piece it is about, and comes with one that is put in', async () => {
    const about = {
      appliesTo: 'equipment',
      equipmentKind: 'dme',
      modelIds: [],
      partNumbers: ['D-40'],
      intervalH: null,
      calendarMonths: 12,
    };
    const { standings } = await add(about);
    expect(standings).toEqual([]);
    const fleet = `/aircraft/${ready.aircraftId}`;
    const piece = { kind: 'dme', name: 'DME', installedOn: '2026-03-01', partNumber: 'd 40' };
    const put = await coordinator.post(`${fleet}/equipment`, piece).expect(201);
    expect(await ofAircraft()).toMatchObject([{ equipmentId: put.body.id, state: 'applies' }]);
    expect(await ask()).toMatchObject({ status: 'short' });
    const change = {
      ...{ title: 'DME out', doneOn: '2026-03-10', statement: 'Removed', signedBy: 'Mo Wrench' },
      ...{ removes: [{ equipmentId: put.body.id, weightLb: 3, armIn: 20 }], installs: [] },
    };
    const made = await coordinator.post(`${fleet}/equipment-changes`, change).expect(201);
    expect(await ofAircraft()).toEqual([]);
    expect(await ask()).toMatchObject({ status: 'not-applicable' });
    const back = `${fleet}/equipment-changes/${made.body.changeId}/take-back`;
    await coordinator.post(back, { reason: 'Entered for the wrong aircraft' }).expect(200);
    expect(await ask()).toMatchObject({ status: 'short' });
  });

  it('goes with a piece that is only noted as removed', async () => {
    const about = {
      appliesTo: 'equipment',
      equipmentKind: 'dme',
      modelIds: [],
      intervalH: null,
      calendarMonths: 12,
    };
    await add(about);
    const path = `/aircraft/${ready.aircraftId}/equipment`;
    const piece = { kind: 'dme', name: 'DME', installedOn: '2026-03-01' };
    const put = await coordinator.post(path, piece).expect(201);
    expect(await ask()).toMatchObject({ status: 'short' });
    await coordinator.patch(`${path}/${put.body.id}`, { removedOn: '2026-03-10' }, '"1"').expect(200);
    expect(await ask()).toMatchObject({ status: 'not-applicable' });
  });

  it('takes the place of another on the day it takes effect', async () => {
    const old = await add({ number: '2024-05' });
    await comply(old.standings[0]!.itemId!);
    const next = await add({
      number: '2026-07',
      supersedes: old.directive.id,
      effectiveOn: '2026-03-12',
      withinDays: 30,
    });
    expect((await coordinator.get('/directives').expect(200)).body.items).toMatchObject([
      { number: '2024-05', supersededBy: next.directive.id },
      { number: '2026-07', supersedes: old.directive.id },
    ]);
    expect(await ofAircraft()).toMatchObject([{ until: '2026-03-12' }, { until: null }]);
    expect((await ask()).says).toContain('2024-05');
    const after = await ask({ departs: '2026-03-13T18:00:00Z', arrives: '2026-03-13T19:00:00Z' });
    expect(after.says).toContain('2026-07');
    expect(after.says).not.toContain('2024-05');
    const twice = await coordinator.post('/directives', text({ supersedes: old.directive.id })).expect(422);
    expect(problemOf(twice).field).toBe('supersedes');
  });

  it('is corrected, withdrawn, and keeps its items from being edited by hand', async () => {
    const { directive, standings } = await add();
    const item = `/aircraft/${ready.aircraftId}/items/${standings[0]!.itemId}`;
    expect(problemOf(await coordinator.patch(item, { intervalH: 900 }, '"1"').expect(409)).code).toBe(
      'item-kept-by-directive',
    );
    expect(problemOf(await coordinator.delete(item, '"1"').expect(409)).code).toBe('item-kept-by-directive');
    const path = `/directives/${directive.id}`;
    await coordinator.patch(path, { title: 'Seat rails and stops' }, '"1"').expect(200);
    expect((await coordinator.get(item).expect(200)).body.title).toContain('Seat rails and stops');
    await coordinator.patch(path, { withdrawnOn: '2026-03-01' }, '"1"').expect(412);
    await coordinator.patch(path, { withdrawnOn: '2026-03-01' }, '"2"').expect(200);
    expect(await ask()).toMatchObject({ status: 'not-applicable' });
    await coordinator.patch(path, { modelIds: [] }, '"3"').expect(200);
    const none = await coordinator.patch(path, { recurring: true, intervalH: null }, '"3"').expect(422);
    expect(problemOf(none).field).toBe('calendarMonths');
  });

  it.each([
    ['equipmentKind', { appliesTo: 'equipment' }],
    ['equipmentKind', { equipmentKind: 'elt' }],
    ['partNumbers', { partNumbers: ['X'] }],
    ['serials[0].through', { serials: [{ from: '9', through: '1' }] }],
    [
      'serials[1].through',
      {
        serials: [
          { from: '1', through: '9' },
          { from: 'A1', through: '9' },
        ],
      },
    ],
    ['calendarMonths', { intervalH: null }],
    ['modelIds[0]', { modelIds: [newId()] }],
    ['supersedes', { supersedes: newId() }],
  ])('refuses %s of %j', async (field, more) => {
    expect(problemOf(await coordinator.post('/directives', text(more)).expect(422)).field).toBe(field);
  });

  it('each number of an authority is on record once', async () => {
    await add({ number: '2026-01' });
    expect(problemOf(await coordinator.post('/directives', text({ number: '2026-01' })).expect(409))).toEqual(
      {
        ...{ code: 'already-there', field: 'number' },
      },
    );
    await add({ number: '2026-01', issuer: 'EASA' });
  });

  it('an aircraft that is new has them from the beginning', async () => {
    await add();
    const administrator = await ready.club.signInAs('administrator');
    const { body: aircraft } = await administrator.get(`/aircraft/${ready.aircraftId}`).expect(200);
    const { modelId, homeAirfieldId } = aircraft;
    const fresh = {
      ...{ registration: 'NX900B', modelId, homeAirfieldId, seats: 4, occupantsCertificated: 4 },
      ...{
        certificatedAfter19960311: false,
        instructionForHire: false,
        carriesForHire: false,
        inspectionMeter: 'tachometer',
      },
    };
    const { body: made } = await administrator.post('/aircraft', fresh).expect(201);
    const { body: items } = await administrator.get(`/aircraft/${made.id}/items`).expect(200);
    expect(items.items).toMatchObject([{ kind: 'directive', lastCompliance: null }]);
  });

  describe('templates of items', () => {
    it('of the jurisdiction and the club’s own are put on an aircraft; what is there is left out', async () => {
      await insertInto(api.sql, ready.club.clubId)('equipment', {
        ...{
          id: newId(),
          aircraft_id: ready.aircraftId,
          kind: 'air-pump',
          name: 'Air pump',
          installed_on: '2020-01-01',
        },
      });
      const own = { kind: 'club', title: 'Wash', scope: 'advice', calendarMonths: 1 };
      const { body: template } = await coordinator.post('/item-templates', own).expect(201);
      const { body: all } = await ready.member.get('/item-templates').expect(200);
      const codes = all.items.map(({ code }: { code: string }) => code) as string[];
      expect(codes).toEqual(
        expect.arrayContaining(['us.annual-inspection', 'us.vor-check', 'any.oil-and-filter', template.code]),
      );
      const path = `/aircraft/${ready.aircraftId}/items/from-templates`;
      const { body } = await coordinator.post(path, { codes }).expect(201);
      const left = (body.leftOut as { code: string; because: string }[]).map(
        ({ code, because }) => `${code}: ${because}`,
      );
      expect(left).toEqual(
        expect.arrayContaining([
          'us.annual-inspection: The aircraft has “Annual inspection” already.',
          'any.backup-battery-check: The aircraft has no backup battery on record.',
        ]),
      );
      const added = body.added as { title: string; equipmentId: string | null }[];
      expect(added.map(({ title }) => title)).toEqual(
        expect.arrayContaining(['VOR check', 'Oil and filter', 'Air pump replacement', 'Wash']),
      );
      expect(added.find(({ title }) => title === 'Air pump replacement')!.equipmentId).not.toBeNull();
      const again = await coordinator.post(path, { codes }).expect(201);
      expect(again.body.added).toEqual([]);
      expect(problemOf(await coordinator.post(path, { codes: ['us.none'] }).expect(422)).field).toBe(
        'codes[0]',
      );
    });

    it('put an aircraft under a progressive programme, which takes the place of its annual', async () => {
      const standing = async (): Promise<Record<string, string>> => {
        const question = { ...tomorrow, purpose: 'solo', personsOnBoard: 1, aircraftIds: [ready.aircraftId] };
        const { body } = await ready.member.post('/decisions', question).expect(200);
        const findings = body.decisions[0].findings as { rule: string; status: string }[];
        return Object.fromEntries(
          findings
            .filter(({ rule }) => /^inspection\.(annual|progressive)$/.test(rule))
            .map(({ rule, status }) => [rule, status]),
        );
      };
      expect(await standing()).toEqual({
        'inspection.annual': 'met',
        'inspection.progressive': 'not-applicable',
      });
      const codes = ['us.progressive-programme-complete-inspection'];
      const path = `/aircraft/${ready.aircraftId}/items/from-templates`;
      const { body } = await coordinator.post(path, { codes }).expect(201);
      const [whole] = body.added as { id: string; kind: string }[];
      expect(whole).toMatchObject({ kind: 'progressive', calendarMonths: 12 });
      expect(await standing()).toEqual({
        'inspection.annual': 'not-applicable',
        'inspection.progressive': 'short',
      });
      await comply(whole!.id, { statement: 'The whole aircraft inspected' });
      expect(await standing()).toEqual({
        'inspection.annual': 'not-applicable',
        'inspection.progressive': 'met',
      });
    });

    it('are edited, kept apart by title, and deleted without their items', async () => {
      const own = { kind: 'club', title: 'Wash', scope: 'advice', calendarMonths: 1 };
      const { body: template } = await coordinator.post('/item-templates', own).expect(201);
      expect(problemOf(await coordinator.post('/item-templates', own).expect(409)).code).toBe(
        'already-there',
      );
      expect(
        problemOf(
          await coordinator
            .post('/item-templates', { ...own, title: 'Wax', calendarMonths: null })
            .expect(422),
        ).field,
      ).toBe('calendarMonths');
      const path = `/item-templates/${template.id}`;
      expect(
        (await coordinator.patch(path, { calendarMonths: 2 }, '"1"').expect(200)).body.calendarMonths,
      ).toBe(2);
      await coordinator
        .post(`/aircraft/${ready.aircraftId}/items/from-templates`, { codes: [template.code] })
        .expect(201);
      await coordinator.delete(path, '"2"').expect(204);
      const { body: items } = await coordinator.get(`/aircraft/${ready.aircraftId}/items`).expect(200);
      expect(items.items.some(({ title }: { title: string }) => title === 'Wash')).toBe(true);
    });
  });
});
