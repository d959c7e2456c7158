/**
 * What the detection holds for a turn, a hold, a stop. None of these is law: they are choices, common practice where not
 * said otherwise, and every caller may give others.
 */
export interface TrackSettings {
  /** Half of the time over which velocity is fitted. */
  smoothingSeconds: number;
  /** A longer silence of the recorder, if also three times its usual one, is a gap; nothing is inferred across it. */
  gapSeconds: number;
  steepTurn: {
    /** Points farther apart than this do not show a turn of half a minute. */
    coarsestSeconds: number;
    /** A turn is looked at from this bank on, and proposed from `leastBankDeg` on: half-way from 30 to 45 degrees. */
    candidateBankDeg: number;
    leastBankDeg: number;
    /** More than a 60-degree bank is aerobatic in most aircraft and not what is practised (14 CFR 91.303, 91.307(c)). */
    mostBankDeg: number;
    leastTurnedDeg: number;
    /** A turn that gains or loses more is a spiral or a chandelle. */
    mostHeightChangeM: number;
  };
  hold: {
    turningDegPerS: number;
    /** Standard rate is 3 degrees a second; wind bends the track's rate to either side of it. */
    leastRateDegPerS: number;
    mostRateDegPerS: number;
    halfTurnDeg: readonly [least: number, most: number];
    /** A smaller turn corrects the course of a leg. */
    correctionDeg: number;
    /** One minute inbound below 14,000 ft (AIM 5-3-8); wind makes the other leg shorter or longer. */
    legSeconds: readonly [least: number, most: number];
    mostHeightBandM: number;
    /** How near the track comes again to where the first turn began. */
    mostMissM: number;
  };
  ground: {
    /** At rest near an airfield below this, for so long: the elevation there is the airfield's. */
    restMps: number;
    restSeconds: number;
    /** A recorder farther off than this is not corrected: the aircraft is not on the ground there. */
    mostOffsetM: number;
    /** Below `touchM` the wheels are taken to be down; below `lowM` the aircraft is over the runway; above `highM` away. */
    touchM: number;
    /** And below this where the speed falls to `brakedShare` of that on the way in: elevations wander by metres. */
    brakedM: number;
    brakedShare: number;
    lowM: number;
    highM: number;
    /** Shortest time below `lowM` that is a landing and not a go-around. */
    contactSeconds: number;
    /** Slower than this for `stopSeconds` is a full stop; never slower than `rollMps` is a touch-and-go. */
    stopMps: number;
    stopSeconds: number;
    rollMps: number;
    /** Without elevations the aircraft is taken to fly from here on. */
    flyingMps: number;
    runwayDeg: number;
    /** Farther from an airfield's position than its longest runway and this is not at that airfield. */
    marginM: number;
  };
}

export const TRACK_SETTINGS: TrackSettings = {
  smoothingSeconds: 4,
  gapSeconds: 15,
  steepTurn: {
    coarsestSeconds: 2.5,
    candidateBankDeg: 22,
    leastBankDeg: 37.5,
    mostBankDeg: 67,
    leastTurnedDeg: 330,
    mostHeightChangeM: 120,
  },
  hold: {
    turningDegPerS: 1.2,
    leastRateDegPerS: 1.5,
    mostRateDegPerS: 5.5,
    halfTurnDeg: [120, 265],
    correctionDeg: 80,
    legSeconds: [12, 200],
    mostHeightBandM: 120,
    mostMissM: 1500,
  },
  ground: {
    restMps: 2.5,
    restSeconds: 10,
    mostOffsetM: 120,
    touchM: 3.5,
    brakedM: 14,
    brakedShare: 0.85,
    lowM: 7,
    highM: 20,
    contactSeconds: 6,
    stopMps: 4,
    stopSeconds: 3,
    rollMps: 12,
    flyingMps: 25,
    runwayDeg: 20,
    marginM: 800,
  },
};
