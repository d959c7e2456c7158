/**
 * Checks what many clients did to bookings at once and were answered, against what may have happened: one booking is a register that is
 * changed by compare-and-set of its version, and two bookings in force never share an aircraft or a person.
 *
 * The ideas are those of checking concurrent histories (Herlihy and Wing, Linearizability, ACM TOPLAS 12(3), 1990): an operation takes
 * effect between its call and its answer, and what was answered before another was called comes before it.
 *
 * Taking an offer of standby is an acknowledged booking like any other: from its answer on it is there, and nobody else has the slot.
 * What else an offer promises is in standby-checker.ts.
 */

/** What a booking is. */
export interface State {
  aircraftId: string;
  people: string[];
  /** Seconds. */
  from: number;
  to: number;
  status: string;
}

/** One operation that was answered with success. Times are counts of events, in the order they were seen. */
export interface Done {
  kind: 'book' | 'take' | 'edit' | 'cancel' | 'offer' | 'accept';
  bookingId: string;
  calledAt: number;
  answeredAt: number;
  /** The version it was made on; null for a new booking. */
  onVersion: number | null;
  version: number;
  state: State;
}

/** What is in the database in the end. */
export interface Kept {
  bookingId: string;
  version: number;
  state: State;
  /** Entries of its history. */
  changes: number;
}

/** Every fault found, in words; none for a history that may have happened. */
export function faultsOf(all: readonly Done[], kept: readonly Kept[]): string[] {
  const { done, faults } = takenOnce(all);
  return [
    ...faults,
    ...versionFaults(done),
    ...keptFaults(done, kept),
    ...overlapFaults(done),
    ...finalOverlaps(kept),
  ];
}

/**
 * An offer may be taken twice and is booked once: whoever comes second is told of the booking as it is by then. Of several takings of
 * one booking the lowest version made it; it is there from the first answer that tells it. The others only read.
 */
function takenOnce(all: readonly Done[]): { done: Done[]; faults: string[] } {
  const done: Done[] = [];
  const faults: string[] = [];
  for (const [id, some] of byBooking(all)) {
    const takings = some.filter(({ kind }) => kind === 'take');
    const others = some.filter(({ kind }) => kind !== 'take');
    const made = takings.filter(({ version }) => version === takings[0]!.version);
    if (made.length > 0)
      others.unshift({
        ...made[0]!,
        calledAt: Math.min(...made.map(({ calledAt }) => calledAt)),
        answeredAt: Math.min(...made.map(({ answeredAt }) => answeredAt)),
      });
    for (const { version, state } of takings) {
      const told = others.find((one) => one.version === version);
      if (!told) faults.push(`${id}: taken at version ${version}, which nobody was told`);
      else if (JSON.stringify(told.state) !== JSON.stringify(state))
        faults.push(`${id}: taken as ${JSON.stringify(state)}, told as ${JSON.stringify(told.state)}`);
    }
    done.push(...others);
  }
  return { done, faults };
}

const MAKES = ['book', 'take'];

const byBooking = (done: readonly Done[]): Map<string, Done[]> => {
  const all = new Map<string, Done[]>();
  for (const one of done) {
    const some = all.get(one.bookingId);
    if (some) some.push(one);
    else all.set(one.bookingId, [one]);
  }
  for (const some of all.values()) some.sort((a, b) => a.version - b.version);
  return all;
};

/** Each change was made on the state the one before it left, and later ones were not answered before earlier ones were called. */
function versionFaults(done: readonly Done[]): string[] {
  const faults: string[] = [];
  for (const [id, all] of byBooking(done)) {
    if (!MAKES.includes(all[0]!.kind)) faults.push(`${id}: changed, but never booked`);
    if (all.filter(({ kind }) => MAKES.includes(kind)).length > 1) faults.push(`${id}: booked twice`);
    for (const [index, one] of all.entries()) {
      const before = all[index - 1];
      if (!before) continue;
      if (one.onVersion !== before.version)
        faults.push(`${id}: version ${one.version} was made on ${one.onVersion}, not on ${before.version}`);
      if (one.version <= before.version) faults.push(`${id}: version ${one.version} was given twice`);
      if (one.answeredAt < before.calledAt)
        faults.push(`${id}: version ${one.version} was answered before ${before.version} was called`);
    }
  }
  return faults;
}

/** What was acknowledged is there as it was acknowledged last, and nothing else is. */
function keptFaults(done: readonly Done[], kept: readonly Kept[]): string[] {
  const faults: string[] = [];
  const all = byBooking(done);
  const found = new Map(kept.map((one) => [one.bookingId, one]));
  for (const [id, some] of all) {
    const last = some.at(-1)!;
    const there = found.get(id);
    if (!there) {
      faults.push(`${id}: acknowledged and lost`);
      continue;
    }
    if (there.version !== last.version)
      faults.push(`${id}: stands at version ${there.version}, last acknowledged ${last.version}`);
    if (JSON.stringify(there.state) !== JSON.stringify(last.state))
      faults.push(
        `${id}: stands as ${JSON.stringify(there.state)}, acknowledged ${JSON.stringify(last.state)}`,
      );
    const changes = some.filter(({ kind }) => !MAKES.includes(kind) && kind !== 'offer').length;
    if (there.changes !== changes)
      faults.push(`${id}: its history has ${there.changes} entries, ${changes} were acknowledged`);
  }
  for (const id of found.keys()) if (!all.has(id)) faults.push(`${id}: there, and never acknowledged`);
  return faults;
}

interface InForce {
  bookingId: string;
  state: State;
  since: number;
  until: number;
}

/** States that were surely in force at one moment: from the answer that told it to the call of what came after it. */
function overlapFaults(done: readonly Done[]): string[] {
  const sure: InForce[] = [];
  for (const [bookingId, all] of byBooking(done)) {
    for (const [index, { state, answeredAt: since }] of all.entries()) {
      const until = all[index + 1]?.calledAt ?? Infinity;
      if (state.status === 'booked' && since < until) sure.push({ bookingId, state, since, until });
    }
  }
  return pairs(sure, (one) => [one.state.aircraftId, ...one.state.people]).flatMap(([a, b]) =>
    Math.max(a.since, b.since) < Math.min(a.until, b.until) ? [clash(a, b)] : [],
  );
}

function finalOverlaps(kept: readonly Kept[]): string[] {
  const standing = kept.filter(({ state }) => state.status === 'booked');
  return pairs(standing, (one) => [one.state.aircraftId, ...one.state.people]).map(([a, b]) => clash(a, b));
}

const clash = (a: { bookingId: string }, b: { bookingId: string }): string =>
  `${a.bookingId} and ${b.bookingId}: both in force at one time, with an aircraft or a person between them`;

/** Pairs of different bookings whose times overlap and that share an aircraft or a person, each once. */
function pairs<T extends { bookingId: string; state: State }>(
  all: readonly T[],
  keys: (one: T) => string[],
): [T, T][] {
  const groups = new Map<string, T[]>();
  for (const one of all)
    for (const key of keys(one)) {
      const group = groups.get(key);
      if (group) group.push(one);
      else groups.set(key, [one]);
    }
  const numbers = new Map(all.map((one, index) => [one, index]));
  const found = new Map<string, [T, T]>();
  for (const group of groups.values()) {
    group.sort((a, b) => a.state.from - b.state.from);
    for (let at = 0; at < group.length; at += 1) {
      const one = group[at]!;
      for (let next = at + 1; next < group.length && group[next]!.state.from < one.state.to; next += 1) {
        const other = group[next]!;
        if (other.bookingId !== one.bookingId)
          found.set([numbers.get(one)!, numbers.get(other)!].sort().join(), [one, other]);
      }
    }
  }
  return [...found.values()];
}
