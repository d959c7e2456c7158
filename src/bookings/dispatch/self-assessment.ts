/**
 * The pilot's self-assessment before a flight, IMSAFE: Pilot's Handbook of Aeronautical Knowledge (FAA-H-8083-25C), chapter 2
 * (from memory). The pilot answers it for themselves; the service keeps that it was gone through and nothing of what came of it.
 */
export const SELF_ASSESSMENT_SOURCE =
  "IMSAFE, Pilot's Handbook of Aeronautical Knowledge (FAA-H-8083-25C), chapter 2";

/** The items in the order of the handbook. */
export const SELF_ASSESSMENT: readonly { item: string; asks: string }[] = [
  { item: 'Illness', asks: 'Am I sick, or do I have any symptoms?' },
  { item: 'Medication', asks: 'Have I taken any medicine that could affect how I fly?' },
  { item: 'Stress', asks: 'Is something at home or at work on my mind that could take my attention?' },
  {
    item: 'Alcohol',
    asks: 'Have I been drinking within 8 hours? Within 24 hours? (14 CFR 91.17 sets 8 hours and 0.04.)',
  },
  { item: 'Fatigue', asks: 'Have I slept enough, and am I rested?' },
  { item: 'Emotion', asks: 'Am I upset about anything?' },
];
