/** A flight's two ends at the aircraft, over HTTP: handed out and brought back by many crews at once, against one SELECT. */
import http from 'node:http';
import { performance } from 'node:perf_hooks';
import { randomUUID } from 'node:crypto';
import { Clock } from '../../../dist/src/platform/clock.js';
import { addDays } from '../../../dist/src/rules/index.js';
import { benchClub } from '../bookings/bench-club.mjs';
import { BARE_PATH, startBenchService } from '../http/service.mjs';
import { median, spread, times } from '../support/measure.mjs';
import { heading, notes, table } from '../support/print.mjs';
import { post } from '../support/post.mjs';

const CREWS = 16;
const ROUNDS = 4;

/** In a service of its own, since its clock is moved: every crew has an aircraft of its own, each round is a day further. */
export async function flightRows() {
  const service = await startBenchService(() => undefined, { BELLCRANK_BACKGROUND_WORK: 'off' });
  try {
    await rowsOf(service);
  } finally {
    await service.stop();
  }
}

async function rowsOf(service) {
  const club = await benchClub(service.database.ownerUrl, CREWS, {
    ...{ slug: 'flights-club', aircraft: CREWS },
  });
  const clock = service.app.get(Clock, { strict: false });
  const real = clock.now;
  const agent = new http.Agent({ keepAlive: true, maxSockets: CREWS });
  const crews = club.people.map((person, index) => crew(service, { club, agent, person, index }));
  const perSecond = { book: [], sheet: [], dispatch: [], back: [], bare: [] };
  try {
    for (let round = 0; round <= ROUNDS; round += 1) {
      const day = addDays(club.today, 1 + round);
      for (const [what, at] of [
        ['book', '15:30:00Z'],
        ['sheet', '15:50:00Z'],
        ['dispatch', '15:52:00Z'],
        ['back', '17:40:00Z'],
        ['bare', '17:45:00Z'],
      ]) {
        clock.now = () => `${day}T${at}`;
        const began = performance.now();
        await Promise.all(crews.map((one) => one[what](day)));
        if (round > 0) perSecond[what].push((CREWS * 1000) / (performance.now() - began));
      }
    }
  } finally {
    clock.now = real;
    agent.destroy();
  }
  heading(`10. ${CREWS} crews at their aircraft at once, over HTTP`);
  const bare = median(perSecond.bare);
  table([
    ['what', 'requests/s: median (least to most)', 'against bare'],
    ...[
      ['book', 'POST /bookings'],
      ['sheet', 'POST /flights/…/dispatch/sheet: judged now'],
      ['dispatch', 'POST /flights/…/dispatch: judged again, handed out'],
      ['back', 'POST /flights/…/return: log, meters, hours, charges'],
      ['bare', 'peer: one SELECT, bare Express route'],
    ].map(([what, name]) => [
      name,
      spread(perSecond[what], 1),
      what === 'bare' ? 'base' : times(median(perSecond[what]) / bare),
    ]),
  ]);
  notes(
    `${ROUNDS} rounds after one uncounted; every flight booked, handed out and brought back, each answer checked. The disk is waited for.`,
  );
}

function crew(service, { club, agent, person, index }) {
  const aircraftId = club.aircraftIds[index];
  let bookingId;
  let sheet;
  let flown = 0;
  const send = async (path, body, status, headers = {}) => {
    const answer = await post(`${service.url}${path}`, {
      // Made anew each time: the clock has moved past the life of the one before.
      ...{
        agent,
        token: service.tokenFor(person),
        body,
        headers: { 'x-forwarded-for': `10.2.0.${index + 1}`, ...headers },
      },
    });
    if (answer.status !== status) throw new Error(`${path} answers ${answer.status}: ${answer.text}`);
    return JSON.parse(answer.text);
  };
  const keyed = () => ({ 'idempotency-key': randomUUID() });
  const loaded = { personsOnBoard: 1, fuelUsGal: 30 };
  return {
    async book(day) {
      const flight = { departs: `${day}T16:00:00Z`, arrives: `${day}T18:00:00Z`, purpose: 'solo' };
      const body = { aircraftId, ...flight, personsOnBoard: 1, plannedHours: 1.5 };
      bookingId = (await send('/api/v1/bookings', body, 201, keyed())).id;
    },
    async sheet() {
      sheet = await send(`/api/v1/flights/${bookingId}/dispatch/sheet`, loaded, 200);
    },
    async dispatch() {
      const body = {
        ...{ ...loaded, oilQt: 6.5, selfAssessed: true },
        meters: sheet.meters.map(({ kind, shownH }) => ({ kind, shownH })),
        squawksSeen: sheet.squawks.map(({ id }) => id),
        conditionsAccepted: sheet.decision.conditions,
      };
      await send(`/api/v1/flights/${bookingId}/dispatch`, body, 201, keyed());
    },
    async back(day) {
      flown += 1.3;
      const landings = { takeoffs: 3, landings: 3, fullStopLandings: 3 };
      const night = { nightTakeoffs: 0, nightFullStopLandings: 0, nightH: 0 };
      const role = { memberId: person.memberId, role: 'pilot-in-command', soleManipulator: true };
      const body = {
        ...{ departedAt: `${day}T16:05:00Z`, arrivedAt: `${day}T17:35:00Z` },
        ...{ fromAirfield: 'XQHB', toAirfield: 'XQHB', fuelUsGal: 18 },
        meters: [{ kind: 'tachometer', shownH: Math.round((1050 + flown) * 10) / 10 }],
        entries: [{ ...role, totalH: 1.5, crossCountryH: 0, ...landings, ...night }],
      };
      await send(`/api/v1/flights/${bookingId}/return`, body, 201, keyed());
    },
    async bare() {
      await send(BARE_PATH, {}, 200);
    },
  };
}
