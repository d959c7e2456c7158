/** Bookings a second when many book at once, against INSERTs under the same exclusion constraint. */
import { once } from 'node:events';
import { Worker } from 'node:worker_threads';
import pg from 'pg';
import { addDays } from '../../../dist/src/rules/index.js';
import { median, spread, times } from '../support/measure.mjs';
import { heading, notes, table } from '../support/print.mjs';
import { benchClub } from './bench-club.mjs';

const CLIENTS = 16;
const REPEATS = 3;
const KINDS = [
  { kind: 'service', name: 'POST /api/v1/bookings', distinct: 5, same: 4 },
  {
    kind: 'insertInClub',
    name: "peer: INSERT into the service's table, club's transaction",
    distinct: 40,
    same: 10,
  },
  { kind: 'insert', name: 'peer: one INSERT, exclusion constraint only', distinct: 40, same: 10 },
];

export async function bookingRows(service) {
  const club = await benchClub(service.database.ownerUrl, CLIENTS);
  await copyOfTheConstraint(service.database.ownerUrl);
  const worker = new Worker(new URL('./clients.mjs', import.meta.url), {
    workerData: {
      url: service.url,
      tokens: club.people.map((person) => service.tokenFor(person)),
      databaseUrls: { owner: service.database.ownerUrl, service: service.database.serviceUrl },
      clubId: club.clubId,
      memberIds: club.people.map(({ memberId }) => memberId),
    },
  });
  try {
    await distinctSlots(worker, club);
    await sameSlot(worker, club);
  } finally {
    worker.postMessage('stop');
    await once(worker, 'exit');
  }
}

async function distinctSlots(worker, club) {
  heading(`6. ${CLIENTS} clients book distinct slots on ${club.aircraftIds.length} aircraft`);
  const rates = await measure(
    worker,
    club,
    false,
    (kind) => kind.distinct,
    (ends, attempts) => {
      const booked = ends.filter((end) => end === 'booked').length;
      if (booked !== attempts) throw new Error(`${attempts - booked} of ${attempts} free slots were refused`);
    },
  );
  print(rates, 'bookings/s', (kind) => kind.distinct * CLIENTS);
  notes(
    'A booking over HTTP includes: token, idempotency key, lock on the aircraft, facts of a pilot with 60 flights and of the aircraft with its bookings so far,',
    'all US and club rules with horizon, decision and facts stored, conflict check, booking and person rows, audit row. Bookings of one aircraft queue by design.',
  );
}

async function sameSlot(worker, club) {
  heading(`7. ${CLIENTS} clients want the same slot at the same time`);
  const deadlocks = new Map(KINDS.map(({ kind }) => [kind, 0]));
  const rates = await measure(
    worker,
    club,
    true,
    (kind) => kind.same,
    (ends, attempts, { kind }) => {
      const booked = ends.filter((end) => end === 'booked').length;
      if (booked !== attempts / CLIENTS) throw new Error(`${booked} booked for ${attempts / CLIENTS} slots`);
      if (attempts > CLIENTS)
        deadlocks.set(kind, deadlocks.get(kind) + ends.filter((end) => end === 'deadlock').length);
    },
  );
  print(rates, 'attempts/s', (kind) => kind.same * CLIENTS);
  notes(
    `Every slot was given exactly once and refused to the other ${CLIENTS - 1}; checked, slot by slot.`,
    `Attempts that ended in a deadlock, which PostgreSQL breaks after a second: ${KINDS.map(({ kind }) => deadlocks.get(kind)).join(', ')} (in the order of the rows).`,
    'INSERTs that meet at an exclusion constraint can wait for each other; the service locks the aircraft first, so that its clients queue.',
  );
}

async function measure(worker, club, together, turnsOf, check) {
  const rates = new Map(KINDS.map((kind) => [kind, []]));
  for (let repeat = -1; repeat < REPEATS; repeat += 1) {
    for (const kind of KINDS) {
      const turns = repeat < 0 ? 1 : turnsOf(kind);
      const take = together
        ? () => slotsFor(club, kind, turns, 1)
        : () => slotsFor(club, kind, turns, CLIENTS);
      const slots = take();
      const lists = Array.from({ length: CLIENTS }, (_, client) =>
        together ? slots : slots.filter((_slot, index) => index % CLIENTS === client),
      );
      worker.postMessage({ kind: kind.kind, lists, together });
      const [{ ends, ms, failed }] = await once(worker, 'message');
      if (failed) throw new Error(failed);
      const attempts = turns * CLIENTS;
      if (together) for (const slot of ends) check(slot, CLIENTS, kind);
      check(ends.flat(), attempts, kind);
      if (repeat >= 0) rates.get(kind).push((attempts * 1000) / ms);
    }
  }
  return rates;
}

function print(rates, unit, attempts) {
  const ours = rates.get(KINDS[0]);
  table([
    ['what', `${unit}: median (least to most)`, 'attempts', 'against ours'],
    ...KINDS.map((kind) => [
      kind.name,
      spread(rates.get(kind), 1),
      `${REPEATS} x ${attempts(kind)}`,
      kind === KINDS[0] ? 'base' : times(median(rates.get(kind)) / median(ours)),
    ]),
  ]);
}

/** Where the next free slot of each way of booking lies: quarter hours of daylight on the coming days, aircraft by aircraft. */
const taken = new Map();
const PER_DAY = 24;

function slotsFor(club, { kind }, turns, perTurn) {
  // The service books the coming weeks; a plain INSERT has no limit ahead and gets days of its own.
  const firstDay = kind === 'service' ? 1 : 100;
  const start = taken.get(kind) ?? 0;
  taken.set(kind, start + turns * perTurn);
  return Array.from({ length: turns * perTurn }, (_, index) => {
    const number = start + index;
    const aircraftId = club.aircraftIds[number % club.aircraftIds.length];
    const quarter = Math.floor(number / club.aircraftIds.length);
    const day = addDays(club.today, firstDay + Math.floor(quarter / PER_DAY));
    const minute = 15 * 60 + (quarter % PER_DAY) * 15;
    return { number, aircraftId, from: clock(day, minute), to: clock(day, minute + 15) };
  });
}

const two = (value) => String(value).padStart(2, '0');
const clock = (day, minute) => `${day}T${two(Math.floor(minute / 60))}:${two(minute % 60)}:00Z`;

/** A table with the bookings' exclusion constraint and nothing else: no row-level security, no triggers, no other keys. */
async function copyOfTheConstraint(ownerUrl) {
  const client = new pg.Client({ connectionString: ownerUrl });
  await client.connect();
  try {
    const { rows } = await client.query(
      "SELECT pg_get_constraintdef(oid) AS text FROM pg_constraint WHERE conname = 'bookings_aircraft_excl'",
    );
    await client.query(
      `CREATE TABLE bench_slots (club_id uuid NOT NULL, id uuid PRIMARY KEY, aircraft_id uuid NOT NULL,
         during tstzrange NOT NULL, occupies boolean NOT NULL, CONSTRAINT bench_slots_excl ${rows[0].text})`,
    );
  } finally {
    await client.end();
  }
}
