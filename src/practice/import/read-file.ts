/** Reads a track file whole: what it shows and what might be entered. Pure; runs on a thread of its own. */
import {
  propose,
  readGpx,
  readTrack,
  type GpxProblem,
  type Proposals,
  type TrackAirfield,
  type TrackPoint,
  type TrackReading,
} from '../track/index.js';

/** What the thread is given. */
export interface TrackTask {
  text: string;
  airfields: TrackAirfield[];
}

/** What it answers. */
export type TrackFile =
  | { ok: false; problems: GpxProblem[] }
  | {
      ok: true;
      fromSeconds: number;
      toSeconds: number;
      points: number;
      notes: { repeatedInstants: number; withoutElevation: number };
      /** A few hundred of the points, for a picture. */
      picture: TrackPoint[];
      proposals: Proposals;
      unseen: TrackReading['unseen'];
    };

const PICTURE_POINTS = 600;

export function readTrackFile({ text, airfields }: TrackTask): TrackFile {
  const read = readGpx(text);
  if (!read.ok) return read;
  const { points, notes } = read;
  const reading = readTrack(points, airfields);
  const step = Math.max(1, Math.ceil(points.length / PICTURE_POINTS));
  return {
    ...{ ok: true, notes, points: points.length, unseen: reading.unseen },
    ...{ fromSeconds: reading.fromSeconds, toSeconds: reading.toSeconds },
    picture: points.filter((_point, at) => at % step === 0 || at === points.length - 1),
    proposals: propose(points, airfields, reading),
  };
}
