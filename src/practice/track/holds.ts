/**
 * Holding patterns: half turns of one direction at about standard rate, straight legs between them, level, and again over
 * where the first turn began (AIM 5-3-8). Whether they were flown by instruments a track does not show.
 */
import { confidence, slope, type Confidence } from './confidence.js';
import { directionDeg, median, turnDeg, type Motion } from './motion.js';
import type { TrackSettings } from './settings.js';

const RAD = Math.PI / 180;

export interface Hold {
  kind: 'hold';
  fromSeconds: number;
  toSeconds: number;
  direction: 'left' | 'right';
  /** Whole rounds flown: two half turns and the leg back to the fix. */
  circuits: number;
  /** Where the first turn began. */
  fix: { latitudeDeg: number; longitudeDeg: number };
  inboundTrackDeg: number;
  /** How near the track came to the fix again, the farthest of all rounds. */
  missM: number;
  legSeconds: number[];
  heightBandM: number | null;
  confidence: Confidence;
}

interface Piece {
  turning: -1 | 0 | 1;
  first: number;
  last: number;
  seconds: number;
  turnedDeg: number;
}

/** Every hold of the flight, in order. */
export function findHolds(motion: readonly Motion[], settings: TrackSettings): Hold[] {
  const pieces = piecesOf(motion, settings);
  const found: Hold[] = [];
  for (let at = 0; at < pieces.length; at += 1) {
    const length = patternFrom(pieces, at, motion, settings);
    if (length < 4) continue;
    const hold = measure(pieces.slice(at, at + length), motion, settings);
    if (!hold) continue;
    found.push(hold);
    at += length - 1;
  }
  return found;
}

/** The flight as turns and straight legs; a piece too short to be either joins the one before. */
function piecesOf(motion: readonly Motion[], { hold }: TrackSettings): Piece[] {
  const raw: Piece[] = [];
  for (const [at, one] of motion.entries()) {
    const rate = rateDegPerS(one);
    const turning = Math.abs(rate) < hold.turningDegPerS ? 0 : rate > 0 ? 1 : -1;
    const before = raw[raw.length - 1];
    if (before && before.turning === turning && motion[before.last]!.stretch === one.stretch)
      before.last = at;
    else raw.push({ turning, first: at, last: at, seconds: 0, turnedDeg: 0 });
  }
  const long = join(raw, motion, (piece) => piece.seconds < 6);
  // A correction of course is part of its leg.
  const legs = long.map((piece) =>
    Math.abs(piece.turnedDeg) < hold.correctionDeg ? { ...piece, turning: 0 as const } : piece,
  );
  return join(legs, motion, () => false);
}

/** Pieces of one kind in a row are one; what `belongs` goes to the piece before. */
function join(
  pieces: readonly Piece[],
  motion: readonly Motion[],
  belongs: (piece: Piece) => boolean,
): Piece[] {
  const joined: Piece[] = [];
  for (const one of pieces) {
    const piece = measured(one, motion);
    const before = joined[joined.length - 1];
    const together = before && motion[before.last]!.stretch === motion[piece.first]!.stretch;
    if (together && (before.turning === piece.turning || belongs(piece))) before.last = piece.last;
    else joined.push(piece);
  }
  return joined.map((piece) => measured(piece, motion));
}

function measured(piece: Piece, motion: readonly Motion[]): Piece {
  return {
    ...piece,
    seconds: motion[piece.last]!.atSeconds - motion[piece.first]!.atSeconds,
    turnedDeg: turnedDeg(motion, piece.first, piece.last),
  };
}

/** Rate of the track, right positive. */
function rateDegPerS({ eastMps, northMps, eastMps2, northMps2, groundMps }: Motion): number {
  if (groundMps < 15) return 0;
  return (eastMps2 * northMps - northMps2 * eastMps) / groundMps ** 2 / RAD;
}

function turnedDeg(motion: readonly Motion[], first: number, last: number): number {
  let sum = 0;
  for (let at = first + 1; at <= last; at += 1)
    sum += turnDeg(
      directionDeg(motion[at - 1]!.eastMps, motion[at - 1]!.northMps),
      directionDeg(motion[at]!.eastMps, motion[at]!.northMps),
    );
  return sum;
}

/** How many pieces from here on are turn, leg, turn, leg, ... of one hold. */
function patternFrom(
  pieces: readonly Piece[],
  from: number,
  motion: readonly Motion[],
  { hold }: TrackSettings,
): number {
  const sign = pieces[from]!.turning;
  if (sign === 0) return 0;
  let length = 0;
  for (let at = from; at < pieces.length; at += 1) {
    const piece = pieces[at]!;
    if (motion[piece.first]!.stretch !== motion[pieces[from]!.first]!.stretch) break;
    if (length % 2 === 0) {
      const rate = Math.abs(piece.turnedDeg) / Math.max(1, piece.seconds);
      const half = Math.abs(piece.turnedDeg);
      if (piece.turning !== sign || half < hold.halfTurnDeg[0] || half > hold.halfTurnDeg[1]) break;
      if (rate < hold.leastRateDegPerS || rate > hold.mostRateDegPerS) break;
    } else if (piece.turning !== 0 || piece.seconds < hold.legSeconds[0]) break;
    length += 1;
    // A leg that goes on and on is the way out of the hold; it may still lead back over the fix.
    if (length % 2 === 0 && piece.seconds > hold.legSeconds[1]) break;
  }
  return length - (length % 2);
}

function measure(pieces: readonly Piece[], motion: readonly Motion[], settings: TrackSettings): Hold | null {
  const limits = settings.hold;
  const fix = motion[pieces[0]!.first]!;
  let [circuits, missM] = [0, 0];
  let end = pieces[0]!.first;
  for (let at = 3; at < pieces.length; at += 2) {
    // Only every second leg leads back to the fix.
    if ((at - 3) % 4 !== 0) continue;
    const leg = motion.slice(pieces[at]!.first, pieces[at]!.last + 1);
    const misses = leg.map((one) => Math.hypot(one.xM - fix.xM, one.yM - fix.yM));
    const nearest = Math.min(...misses);
    if (nearest > limits.mostMissM) break;
    circuits += 1;
    missM = Math.max(missM, nearest);
    end = pieces[at]!.first + misses.indexOf(nearest);
  }
  if (circuits === 0) return null;
  const within = motion.slice(pieces[0]!.first, end + 1);
  const heights = within.flatMap(({ elevationM }) => (elevationM === null ? [] : [elevationM]));
  const band = heights.length < within.length ? null : Math.max(...heights) - Math.min(...heights);
  if (band !== null && band > limits.mostHeightBandM) return null;
  const legs = pieces.filter((piece) => piece.turning === 0 && piece.first < end);
  const tracks = legs.map((leg) => trackOf(motion, leg));
  const inbound = tracks[1]!;
  const reciprocal = Math.abs(180 - Math.abs(turnDeg(inbound, tracks[0]!)));
  return {
    kind: 'hold',
    fromSeconds: fix.atSeconds,
    toSeconds: motion[end]!.atSeconds,
    direction: pieces[0]!.turning > 0 ? 'right' : 'left',
    circuits,
    fix: { latitudeDeg: fix.latitudeDeg, longitudeDeg: fix.longitudeDeg },
    inboundTrackDeg: inbound,
    missM,
    legSeconds: legs.map((leg) => leg.seconds),
    heightBandM: band,
    confidence: confidence([
      { because: 'circuits', factor: circuits > 1 ? 1 : 0.75 },
      { because: 'return-to-fix', factor: slope(missM, 400, limits.mostMissM, 0.5) },
      { because: 'reciprocal-legs', factor: slope(reciprocal, 20, 60, 0.6) },
      band === null
        ? { because: 'no-elevation', factor: 0.7 }
        : { because: 'level', factor: slope(band, 60, limits.mostHeightBandM, 0.6) },
    ]),
  };
}

function trackOf(motion: readonly Motion[], leg: Piece): number {
  const one = motion.slice(leg.first, leg.last + 1);
  return directionDeg(median(one.map(({ eastMps }) => eastMps)), median(one.map(({ northMps }) => northMps)));
}
