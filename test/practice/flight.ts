/**
 * Flights made from known physics, sampled as a recorder would: coordinated turns in an air mass that moves with the
 * wind (rate = g tan(bank) / V, FAA-H-8083-25), a steering that rolls no faster than an aircraft, and noise from a seed.
 */
import geodesic from 'geographiclib-geodesic';
import type { TrackAirfield } from '../../src/practice/track/fields.js';
import type { TrackPoint } from '../../src/practice/track/point.js';

const RAD = Math.PI / 180;
const G = 9.80665;
export const KT = 1852 / 3600;
const STEP = 0.1;
/** Aircraft of this kind roll at some 12 degrees a second in ordinary use (common practice, no source). */
const ROLL_DEG_PER_S = 12;

/** An invented airfield with one runway in both directions. */
export const FIELD: TrackAirfield = {
  code: 'ZZHB',
  latitudeDeg: 46.52,
  longitudeDeg: -93.31,
  elevationFt: 1210,
  runways: [
    { designator: '09', trueHeadingDeg: 90, lengthFt: 3600 },
    { designator: '27', trueHeadingDeg: 270, lengthFt: 3600 },
  ],
};
export const FIELD_M = FIELD.elevationFt * 0.3048;
const RUNWAY_M = 3600 * 0.3048;

export interface Wind {
  fromDeg: number;
  kt: number;
}

export interface Recorder {
  everySeconds?: number;
  /** Scatter of each position, independent from point to point, metres in each direction. */
  whiteM?: number;
  /** Slow wander, with a memory of a minute, as of a receiver. */
  wanderM?: number;
  /** Times the above for elevations. */
  verticalTimes?: number;
  /** Added to every elevation: height above the ellipsoid instead of the sea, a wrong altimeter setting. */
  elevationOffsetM?: number;
  withoutElevation?: boolean;
  seed?: number;
}

/** A known stream of numbers in [0, 1) (mulberry32). */
export function stream(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const bell = (next: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());

interface State {
  t: number;
  x: number;
  y: number;
  z: number;
}

/** One flight being flown. Metres east and north of the airfield, metres a second, degrees true. */
export class Flight {
  t = 0;
  x = -RUNWAY_M / 2;
  y = 0;
  z = FIELD_M;
  headingDeg = 90;
  bankDeg = 0;
  tas = 0;
  readonly states: State[] = [];
  /** When the wheels left or met the runway. */
  readonly events: { kind: 'take-off' | 'touch-and-go' | 'full stop'; atSeconds: number }[] = [];
  private readonly east: number;
  private readonly north: number;

  constructor(
    readonly wind: Wind = { fromDeg: 0, kt: 0 },
    readonly beginsAt: number = Date.parse('2026-06-20T15:00:00Z') / 1000,
  ) {
    this.east = -Math.sin(wind.fromDeg * RAD) * wind.kt * KT;
    this.north = -Math.cos(wind.fromDeg * RAD) * wind.kt * KT;
  }

  /** Begins in the air at a height above the airfield. */
  static inTheAir(wind: Wind, tasKt: number, heightM = 900, headingDeg = 0): Flight {
    const flight = new Flight(wind);
    flight.z += heightM;
    flight.tas = tasKt * KT;
    flight.headingDeg = headingDeg;
    return flight;
  }

  private keep(): void {
    this.states.push({ t: this.t, x: this.x, y: this.y, z: this.z });
    this.t += STEP;
  }

  private air(climb: number): void {
    this.keep();
    const rate = (G * Math.tan(this.bankDeg * RAD)) / this.tas / RAD;
    this.headingDeg += rate * STEP;
    this.x += (this.tas * Math.sin(this.headingDeg * RAD) + this.east) * STEP;
    this.y += (this.tas * Math.cos(this.headingDeg * RAD) + this.north) * STEP;
    this.z += climb * STEP;
  }

  private roll(to: number): void {
    const most = ROLL_DEG_PER_S * STEP;
    this.bankDeg += Math.max(-most, Math.min(most, to - this.bankDeg));
  }

  straight(seconds: number, climb = 0): this {
    for (let s = 0; s < seconds; s += STEP) {
      this.roll(0);
      this.air(climb);
    }
    return this;
  }

  /** A turn through so many degrees of heading, right positive; wings level at its end. */
  turn(degrees: number, bankDeg: number, climb = 0, wobbleDeg = 0): this {
    const sign = Math.sign(degrees);
    const began = this.headingDeg;
    // What the roll-out still turns: the integral of g tan(bank) / V while the bank goes to nothing.
    const lead = ((G / this.tas) * -Math.log(Math.cos(bankDeg * RAD))) / (ROLL_DEG_PER_S * RAD) / RAD;
    let steps = 0;
    while (sign * (this.headingDeg - began) < Math.abs(degrees) - lead) {
      this.roll(sign * (bankDeg + wobbleDeg * Math.sin(steps * STEP * 0.6)));
      this.air(climb);
      steps += 1;
    }
    while (Math.abs(this.bankDeg) > 1e-9) {
      this.roll(0);
      this.air(climb);
    }
    return this;
  }

  /** Heading that makes a track good in this wind. */
  headingFor(trackDeg: number): number {
    const across = this.east * Math.cos(trackDeg * RAD) - this.north * Math.sin(trackDeg * RAD);
    return trackDeg - Math.asin(Math.max(-0.9, Math.min(0.9, across / this.tas))) / RAD;
  }

  /** Flies to a point, steering for it; the height goes towards `z` at `climb`, or down a slope that ends there. */
  to(
    x: number,
    y: number,
    z: number,
    climb: number,
    options: { slope?: boolean; bankDeg?: number } = {},
  ): this {
    const most = options.bankDeg ?? 25;
    for (let steps = 0; steps < 12_000; steps += 1) {
      const [dx, dy] = [x - this.x, y - this.y];
      const away = Math.hypot(dx, dy);
      const wanted = this.headingFor(Math.atan2(dx, dy) / RAD);
      const off = ((((wanted - this.headingDeg) % 360) + 540) % 360) - 180;
      if (away < 60 || (away < 250 && Math.abs(off) > 70)) return this;
      this.roll(Math.max(-most, Math.min(most, off * 1.2)));
      const target = options.slope ? z + away * Math.tan(3 * RAD) : z;
      const up = Math.max(-Math.abs(climb), Math.min(Math.abs(climb), (target - this.z) / 2));
      this.air(up);
    }
    throw new Error('never got there');
  }

  /** Along the runway on the wheels, from one ground speed to another. */
  wheels(toMps: number, accelMps2: number, directionDeg = 90): this {
    const speed = { now: this.groundMps() };
    const steps = Math.max(1, Math.round(Math.abs(toMps - speed.now) / accelMps2 / STEP));
    const each = (toMps - speed.now) / steps;
    for (let step = 0; step < steps; step += 1) {
      this.keep();
      speed.now += each;
      this.x += Math.sin(directionDeg * RAD) * speed.now * STEP;
      this.y += Math.cos(directionDeg * RAD) * speed.now * STEP;
      this.z = FIELD_M;
    }
    this.ground = toMps;
    this.headingDeg = directionDeg;
    this.bankDeg = 0;
    return this;
  }

  private ground: number | null = 0;
  private groundMps(): number {
    return this.ground ?? Math.hypot(this.velocity()[0], this.velocity()[1]);
  }
  private velocity(): [number, number] {
    return [
      this.tas * Math.sin(this.headingDeg * RAD) + this.east,
      this.tas * Math.cos(this.headingDeg * RAD) + this.north,
    ];
  }

  rest(seconds: number): this {
    for (let s = 0; s < seconds; s += STEP) this.keep();
    this.ground = 0;
    return this;
  }

  /** Taxi back to the beginning of runway 09. */
  taxiBack(mps: number): this {
    this.wheels(mps, 1, 0);
    for (let s = 0; s < 6; s += STEP) this.onGround(mps, 0);
    while (this.x > -RUNWAY_M / 2 + 60) this.onGround(mps, 270);
    while (this.y > 3) this.onGround(mps, 180);
    this.ground = mps;
    return this;
  }

  private onGround(mps: number, directionDeg: number): void {
    this.keep();
    this.x += Math.sin(directionDeg * RAD) * mps * STEP;
    this.y += Math.cos(directionDeg * RAD) * mps * STEP;
  }

  /** Along the runway until it flies, and away to a height; 60 kt at lift-off, 75 in the climb. */
  takeOff(heightM = 300): this {
    this.wheels(60 * KT, 2.2);
    this.events.push({ kind: 'take-off', atSeconds: this.beginsAt + this.t });
    this.tas = 75 * KT;
    this.ground = null;
    this.headingDeg = this.headingFor(90);
    while (this.z < FIELD_M + heightM) {
      this.roll(0);
      this.air(3.6);
    }
    return this;
  }

  /** The rectangle to the left of runway 09, down to `lowestM` above it on the centre line. */
  circuit(lowestM: number): this {
    const high = FIELD_M + 300;
    this.to(this.x + 200, 900, high, 3.6);
    this.tas = 85 * KT;
    this.to(1000, 1600, high, 3.6).to(-2200, 1600, high, 3.6);
    this.tas = 70 * KT;
    this.to(-2900, 900, FIELD_M + 210, 3).to(-2500, 60, FIELD_M + 120, 3);
    this.tas = 65 * KT;
    // Aims a little way down the runway.
    return this.to(-RUNWAY_M / 2 + 150, 0, FIELD_M + lowestM, 4, { slope: true });
  }

  /** From the end of a circuit on to the wheels. */
  touchDown(kind: 'touch-and-go' | 'full stop' = 'full stop'): this {
    this.tas = 58 * KT;
    this.headingDeg = this.headingFor(90);
    while (this.z > FIELD_M + 0.2) {
      this.roll(0);
      this.air(-Math.min(1.2, Math.max(0.3, (this.z - FIELD_M) / 2)));
    }
    this.z = FIELD_M;
    this.events.push({ kind, atSeconds: this.beginsAt + this.t });
    return this;
  }

  touchAndGo(): this {
    return this.circuit(4)
      .touchDown('touch-and-go')
      .wheels(40 * KT, 1.5)
      .takeOff();
  }

  fullStop(taxiMps = 7): this {
    return this.circuit(4).touchDown('full stop').wheels(taxiMps, 1.8);
  }

  /** As low as `heightM` for some seconds, then away. */
  goAround(heightM: number): this {
    this.circuit(heightM);
    this.headingDeg = this.headingFor(90);
    this.straight(3).straight(25, 3.6);
    while (this.z < FIELD_M + 300) this.air(3.6);
    return this;
  }

  /** Level along the runway at about 12 m for a quarter of a minute, as for a look at it, then away. */
  lowPass(): this {
    this.circuit(9);
    this.headingDeg = this.headingFor(90);
    this.straight(15);
    while (this.z < FIELD_M + 300) this.air(3.6);
    return this;
  }

  /** A hold to the right at (x, y), inbound 90 degrees, so many rounds, one minute out. */
  hold(x: number, y: number, rounds: number, direction: 1 | -1 = 1, bankDeg?: number): this {
    const bank = bankDeg ?? Math.atan((this.tas * 3 * RAD) / G) / RAD;
    this.to(x - 5000, y, this.z, 0).to(x, y, this.z, 0);
    for (let round = 0; round < rounds; round += 1) {
      // Three times the inbound drift correction on the way out (AIM 5-3-8).
      const drift = ((((this.headingFor(90) - 90) % 360) + 540) % 360) - 180;
      const out = 270 - Math.max(-50, Math.min(50, 3 * drift));
      this.turn(direction * ((((direction * (out - this.headingDeg)) % 360) + 360) % 360 || 360), bank);
      this.straight(60);
      const back = this.headingFor(90);
      this.turn(direction * ((((direction * (back - this.headingDeg)) % 360) + 360) % 360 || 360), bank);
      this.to(x, y, this.z, 0);
    }
    return this;
  }

  /** What the recorder wrote. */
  points(recorder: Recorder = {}): TrackPoint[] {
    const { everySeconds = 1, whiteM = 0, wanderM = 0, verticalTimes = 1.5, seed = 1 } = recorder;
    const next = stream(seed);
    const wander = [0, 0, 0];
    const keepShare = Math.exp(-everySeconds / 60);
    const stride = Math.round(everySeconds / STEP);
    const out: TrackPoint[] = [];
    for (let at = 0; at < this.states.length; at += stride) {
      const state = this.states[at]!;
      const off = wander.map((one, axis) => {
        wander[axis] = one * keepShare + wanderM * Math.sqrt(1 - keepShare ** 2) * bell(next);
        return (wander[axis]! + whiteM * bell(next)) * (axis === 2 ? verticalTimes : 1);
      });
      const [x, y] = [state.x + off[0]!, state.y + off[1]!];
      const { lat2, lon2 } = geodesic.Geodesic.WGS84.Direct(
        FIELD.latitudeDeg,
        FIELD.longitudeDeg,
        Math.atan2(x, y) / RAD,
        Math.hypot(x, y),
      );
      out.push({
        atSeconds: this.beginsAt + Math.round(state.t * 10) / 10,
        latitudeDeg: lat2!,
        longitudeDeg: lon2!,
        elevationM: recorder.withoutElevation ? null : state.z + off[2]! + (recorder.elevationOffsetM ?? 0),
        segment: 0,
      });
    }
    return out;
  }
}

/** Points as a GPX 1.1 file. */
export function gpxOf(points: readonly TrackPoint[]): string {
  const lines = points.map(({ atSeconds, latitudeDeg, longitudeDeg, elevationM }) => {
    const time = new Date(atSeconds * 1000).toISOString();
    const ele = elevationM === null ? '' : `<ele>${elevationM.toFixed(2)}</ele>`;
    return `<trkpt lat="${latitudeDeg.toFixed(7)}" lon="${longitudeDeg.toFixed(7)}">${ele}<time>${time}</time></trkpt>`;
  });
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<gpx version="1.1" creator="test" xmlns="http://www.topografix.com/GPX/1/1">',
    '<trk><name>Round the field &amp; back</name><trkseg>',
    ...lines,
    '</trkseg></trk></gpx>',
  ].join('\n');
}
