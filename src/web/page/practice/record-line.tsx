import { Day } from '../parts/said.js';
import type { PracticeRecord } from './types.js';
import { verdictSays } from './words.js';

/** One record in a line, and what became of it. */
export function RecordLine({ one }: { one: PracticeRecord }) {
  return (
    <>
      <strong>{one.title}</strong>, <Day date={one.flownOn} />
      {one.night && ', at night'}
      {one.crosswindKt !== null && `, crosswind ${one.crosswindKt} kt`}
      {one.gustSpreadKt !== null && `, gusts ${one.gustSpreadKt} kt over the wind`}
      {one.runwayFt !== null && `, runway ${one.runwayFt} ft`}
      {one.equipment !== null && `, with ${one.equipment.join(', ')}`}. {verdictSays(one)}{' '}
      <small>
        {one.instructor ? `Signed by ${one.instructor.name}.` : 'Own record.'}
        {one.trackEvent !== null && ' From a track.'}
      </small>
      {one.note && <p>{one.note}</p>}
      {one.because !== null && (
        <p>
          <em>{one.withdraws ? 'Withdraws a record' : 'In the place of another'}:</em> {one.because}
        </p>
      )}
      {one.correctedBy !== null && (
        <p>
          <em>Does not count any more.</em>
        </p>
      )}
    </>
  );
}
