import type { TrackReading } from './types.js';

const [WIDTH, HEIGHT, EDGE] = [640, 360, 14];

/** The track from above, north up, with a mark for each event; the list beside it says the same in words. */
export function TrackPicture({ reading }: { reading: TrackReading }) {
  const { picture, events } = reading;
  const middle = picture.reduce((sum, { latitudeDeg }) => sum + latitudeDeg, 0) / picture.length;
  const shrink = Math.cos((middle * Math.PI) / 180);
  const xs = picture.map(({ longitudeDeg }) => longitudeDeg * shrink);
  const ys = picture.map(({ latitudeDeg }) => latitudeDeg);
  const [left, top] = [Math.min(...xs), Math.max(...ys)];
  const scale = Math.min(
    (WIDTH - 2 * EDGE) / Math.max(1e-6, Math.max(...xs) - left),
    (HEIGHT - 2 * EDGE) / Math.max(1e-6, top - Math.min(...ys)),
  );
  const at = (index: number): [number, number] => [
    EDGE + (xs[index]! - left) * scale,
    EDGE + (top - ys[index]!) * scale,
  ];
  const nearest = (instant: string): number => {
    const found = picture.findIndex((point) => point.at >= instant);
    return found === -1 ? picture.length - 1 : found;
  };
  const line = picture.map((_point, index) =>
    at(index)
      .map((value) => value.toFixed(1))
      .join(','),
  );
  return (
    <svg
      class="track"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={`The track from above, north up, with ${events.length} events marked`}
    >
      <polyline points={line.join(' ')} />
      {events.map((event, index) => {
        const [x, y] = at(nearest(event.at));
        return (
          <g key={event.id}>
            <circle cx={x} cy={y} r="9" />
            <text x={x} y={y + 4} text-anchor="middle">
              {index + 1}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
