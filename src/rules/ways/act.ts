/** What is known of an act: its kind, how long one waits for it, what it costs by the club's policy, what flight it is. */

/** What sort of doing it is; plans that differ in kind are shown before plans that do not. */
export type ActKind = 'flight' | 'paper' | 'appointment' | 'maintenance' | 'change-of-request' | 'office';

/** Parameters of src/rules/parameters/club/costs.ts, without their prefix. */
export type Hours =
  /** As many as the act enters in the log. */
  | 'logged'
  | 'landing'
  | 'review'
  | 'review-ground'
  | 'check'
  | 'differences'
  | 'instrument'
  | 'training'
  | 'test'
  | 'test-ground'
  | 'appointment'
  | 'course'
  | 'office';
export type Fee =
  | 'medical-exam'
  | 'physician'
  | 'practical-test'
  | 'course'
  | 'document'
  | 'annual'
  | 'hundred-hour'
  | 'test'
  | 'items'
  | 'repair'
  | 'fitting';
type Points = 'others-asked' | 'officer';
export type Lead =
  | 'alone'
  | 'instructor'
  | 'examiner'
  | 'medical'
  | 'course'
  | 'inspection'
  | 'repair'
  | 'fitting'
  | 'document'
  | 'office'
  | 'others';

/** The flight an act is: it is judged like any other flight, and nothing may stand in its way. */
export interface Sketch {
  /**
   * Who has to be aboard besides the person who practises; an instructor can always stand in for nobody and for a safety
   * pilot. A safety pilot is required crew under the hood alone (14 CFR 91.109(c)), so nothing else is flown with one.
   */
  with: 'nobody' | 'safety-pilot' | 'instructor' | 'examiner';
  /** 'any': by day, but at night as well where it is flown together with something that needs the night. */
  light: 'day' | 'night' | 'any';
  /** Rules, by how their ids begin, that bind the person although somebody else is in command: an applicant needs a
   * medical (14 CFR 61.39(a)(4)). */
  alsoMet?: readonly string[];
}

/** One act of the catalogue. */
export interface ActEntry {
  kind: ActKind;
  /** How long one waits for it; null: it can be done at once. */
  lead: Lead | null;
  /** In the air, besides getting there and back; landings are counted in what the act records. */
  air: Hours | null;
  ground: Hours | null;
  fee: Fee | null;
  /** Whose money the fee is. */
  payer: 'member' | 'club';
  /** The time on the ground is an instructor's too. */
  instructed: boolean;
  points: Points | null;
  sketch: Sketch | null;
}
