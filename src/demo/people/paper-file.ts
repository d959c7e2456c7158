import type { Instant, LocalDate } from '../../rules/index.js';
import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { DemoRows } from '../rows.js';
import { at, clock } from '../when.js';
import type { Person } from './person.js';

/** The tables of papers. */
export type PaperRows = Pick<
  DemoRows,
  | 'certificates'
  | 'certificate_ratings'
  | 'instructor_certificates'
  | 'medicals'
  | 'basic_med'
  | 'reviews'
  | 'endorsements'
>;

const EVENING = clock(22, 40);

/** Writes one member's papers: entered the evening they are dated (or when the member joined), verified soon after. */
export class PaperFile {
  constructor(
    readonly person: Person,
    private readonly verifier: Person,
    readonly rows: PaperRows,
  ) {}

  paper(kind: string, on: LocalDate, verified = true) {
    const day = on > this.person.joinedOn ? on : this.person.joinedOn;
    const recordedAt: Instant = at(day, EVENING);
    return {
      club_id: DEMO_CLUB_ID,
      id: demoId(this.person.id, kind),
      member_id: this.person.id,
      recorded_at: recordedAt,
      verified_by: verified ? this.verifier.id : null,
      verified_at: verified ? at(day, EVENING + 15) : null,
    };
  }
}
