import { WHEN_WORDS, type Limits, type Point } from './loading-types.js';

const WIDE = 320;
const HIGH = 240;
const EDGE = 34;

/** Limits of the centre of gravity with the points of the flight in them; the same is said in words for who cannot see it. */
export function EnvelopePicture({ envelopes, points }: { envelopes: Limits[]; points: Point[] }) {
  const all = [...envelopes.flatMap((one) => one.points), ...points];
  if (all.length === 0) return null;
  const arms = all.map(({ armIn }) => armIn);
  const weights = all.map(({ weightLb }) => weightLb);
  const [left, right] = spread(arms, 0.5);
  const [low, high] = spread(weights, 50);
  const x = (arm: number): number => EDGE + ((arm - left) / (right - left)) * (WIDE - EDGE - 8);
  const y = (weight: number): number => HIGH - EDGE - ((weight - low) / (high - low)) * (HIGH - EDGE - 12);
  const at = ({ armIn, weightLb }: { armIn: number; weightLb: number }): string =>
    `${x(armIn).toFixed(1)},${y(weightLb).toFixed(1)}`;
  const says = points
    .map(
      ({ when, weightLb, armIn, categories }) =>
        `${WHEN_WORDS[when]} ${weightLb.toFixed(0)} lb at ${armIn.toFixed(1)} in, ${categories.length === 0 ? 'outside the limits' : 'within'}`,
    )
    .join('; ');
  return (
    <svg
      class="envelope"
      viewBox={`0 0 ${WIDE} ${HIGH}`}
      role="img"
      aria-label={`Centre of gravity: ${says}`}
    >
      {envelopes.map((one) => (
        <polygon key={one.category} class={`limits ${one.category}`} points={one.points.map(at).join(' ')} />
      ))}
      <polyline class="moves" points={points.map(at).join(' ')} />
      {points.map((point) => (
        <g key={point.when} class={point.categories.length === 0 ? 'point outside' : 'point'}>
          {point.when === 'takeoff' && <circle cx={x(point.armIn)} cy={y(point.weightLb)} r="5" />}
          {point.when === 'landing' && (
            <rect x={x(point.armIn) - 4.5} y={y(point.weightLb) - 4.5} width="9" height="9" />
          )}
          {point.when === 'zero-fuel' && (
            <path d={`M ${x(point.armIn)} ${y(point.weightLb) - 6} l 6 11 h -12 z`} />
          )}
        </g>
      ))}
      <text x={EDGE} y={HIGH - 8}>
        {left.toFixed(0)} in
      </text>
      <text x={WIDE - 8} y={HIGH - 8} text-anchor="end">
        {right.toFixed(0)} in
      </text>
      <text x="2" y={y(low)}>
        {low.toFixed(0)}
      </text>
      <text x="2" y={y(high) + 10}>
        {high.toFixed(0)} lb
      </text>
      <text x={WIDE / 2} y={HIGH - 8} text-anchor="middle">
        ● take-off ■ landing ▲ no fuel
      </text>
    </svg>
  );
}

function spread(values: number[], least: number): [number, number] {
  const [from, to] = [Math.min(...values), Math.max(...values)];
  const room = Math.max(least, (to - from) * 0.08);
  return [from - room, to + room];
}
