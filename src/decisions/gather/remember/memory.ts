import type { AsOf } from '../as-of.js';
import { deepFreeze } from '../deep-freeze.js';
import { touches, type Remembered } from './touched.js';

interface Entry {
  value: object;
  /** From here on until `standsUntil` the same question gives the same, as long as nothing it reads is written. */
  knownAt: string;
  standsUntil: string;
  /** Snapshots under which that is so, the newest last: the one it was gathered under, and those it was found untouched under. */
  snapshots: string[];
  /** When the newest was seen, on a clock that only goes forwards (milliseconds). */
  seenAt: number;
}

/** What a transaction sees changed since earlier snapshots. */
export interface Marks {
  snapshot: string;
  /** When the database server started: another one may count its transactions otherwise. */
  startedAt: string;
  /** Subjects changed, by snapshot; a snapshot that is not there was not asked about, or more changed than is worth looking through. */
  changed: ReadonlyMap<string, readonly string[]>;
}

/** A person with two years of log is some 100 kB. */
const MOST = 1000;
/** Not found untouched for so long, an entry goes; marks are kept far longer (platform/database/old-marks.ts). */
const LONGEST_MS = 600_000;
/** So old, a snapshot is followed by a newer one. Not each time: whoever asked about the older one just now shall find it. */
const FOLLOWED_AFTER_MS = 5000;
const SNAPSHOTS = 3;

/**
 * Facts gathered for earlier questions, club by club. Nothing in here is taken for true before `still` has held it against what the
 * asking transaction sees changed.
 */
export class Memory {
  private readonly entries = new Map<string, Entry>();
  private startedAt: string | null = null;

  /** The snapshots to read marks for. */
  snapshotsOf(clubId: string, whats: readonly Remembered[]): string[] {
    const newest = whats.map((what) => this.entries.get(keyOf(clubId, what))?.snapshots.at(-1));
    return [...new Set(newest.filter((snapshot) => snapshot !== undefined))];
  }

  /** What is remembered, whether or not it stands: enough to know what to ask about, and nothing to answer with. */
  guess<T extends object>(clubId: string, what: Remembered): T | null {
    return (this.entries.get(keyOf(clubId, what))?.value as T | undefined) ?? null;
  }

  /** What is remembered and stands: nobody has changed it since, and the question is asked while its day and bookings last. */
  recall<T extends object>(
    of: { clubId: string; what: Remembered; knownAt: string; nowMs: number },
    marks: Marks,
  ): T | null {
    if (this.startedAt !== marks.startedAt) this.entries.clear();
    this.startedAt = marks.startedAt;
    const key = keyOf(of.clubId, of.what);
    const entry = this.entries.get(key);
    if (!entry) return null;
    const since = entry.snapshots.find((snapshot) => marks.changed.has(snapshot));
    // One that came in after the marks were read: they say nothing of it.
    if (since === undefined) return null;
    const touched = marks.changed.get(since)!.some((subject) => touches(subject, of.what));
    if (touched || of.nowMs - entry.seenAt > LONGEST_MS || !standsAt(entry, of.knownAt)) {
      this.entries.delete(key);
      return null;
    }
    if (of.nowMs - entry.seenAt > FOLLOWED_AFTER_MS) {
      entry.snapshots = [...entry.snapshots, marks.snapshot].slice(-SNAPSHOTS);
      entry.seenAt = of.nowMs;
    }
    return entry.value as T;
  }

  /** Keeps what was gathered, frozen, since questions share it; nothing that its own transaction may still take back. */
  keep(
    of: { clubId: string; what: Remembered; knownAt: string; nowMs: number },
    value: object,
    { settled, snapshot, standsUntil }: AsOf,
  ): void {
    const key = keyOf(of.clubId, of.what);
    const there = this.entries.get(key);
    // What somebody else gathered meanwhile stands as well, and others are about to find it.
    if (!settled || (there && standsAt(there, of.knownAt))) return;
    this.entries.delete(key);
    this.entries.set(key, {
      value: deepFreeze(value),
      ...{ knownAt: of.knownAt, standsUntil, snapshots: [snapshot], seenAt: of.nowMs },
    });
    if (this.entries.size > MOST) this.entries.delete(this.entries.keys().next().value!);
  }

  /** Forgets what was gathered otherwise than is asked for now. */
  forget(clubId: string, what: Remembered): void {
    this.entries.delete(keyOf(clubId, what));
  }
}

const standsAt = (entry: Entry, knownAt: string): boolean =>
  entry.knownAt <= knownAt && knownAt < entry.standsUntil;

const keyOf = (clubId: string, what: Remembered): string =>
  'id' in what ? `${clubId} ${what.kind} ${what.id}` : `${clubId} ${what.kind}`;
