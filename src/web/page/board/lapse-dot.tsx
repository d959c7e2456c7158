import { dayOf } from '../maintenance/scale.js';
import type { Lapse } from './types.js';

/** One lapse in the picture, ringed and numbered where it costs booked flights. */
export function Dot({ of, cx, cy, letter }: { of: Lapse; cx: number; cy: number; letter: string }) {
  const { costs, weight, title, on } = of;
  return (
    <g>
      <title>{`${dayOf(on)}: ${title}${costs.length > 0 ? `, ${costs.length} booked flights lost` : ''}`}</title>
      {costs.length > 0 && (
        <>
          <circle class="ring" cx={cx} cy={cy} r={11} />
          <text x={cx + 13} y={cy + 4} class="lost">
            {costs.length}
          </text>
        </>
      )}
      <Shape weight={weight} cx={cx} cy={cy} letter={letter} />
    </g>
  );
}

/** A disc for law, a diamond for the club, with the requirement's letter. */
export function Shape({
  weight,
  cx,
  cy,
  letter,
}: {
  weight: Lapse['weight'];
  cx: number;
  cy: number;
  letter: string;
}) {
  return (
    <>
      {weight === 'law' ? (
        <circle class="law" cx={cx} cy={cy} r={8} />
      ) : (
        <path class="club" d={`M${cx} ${cy - 10}l10 10-10 10-10-10z`} />
      )}
      <text x={cx} y={cy + 4} class="count">
        {letter}
      </text>
    </>
  );
}
