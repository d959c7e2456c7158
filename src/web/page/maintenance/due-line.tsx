import { across, lastDay, type Scale } from './scale.js';
import type { ForecastItem } from './types.js';

/** One item across the weeks: solid while it is good for certain, hatched where it may fall due. Said in words beside it. */
export function DueLine({
  item,
  scale,
  slotOn,
}: {
  item: ForecastItem;
  scale: Scale;
  slotOn: string | null;
}) {
  const end = lastDay(scale);
  const bad = item.state !== 'running' && item.state !== 'settled';
  const byHours = item.by === 'hours' && item.earliestOn !== null;
  const sure = across(scale, bad ? scale.from : byHours ? item.earliestOn! : (item.likelyOn ?? end));
  const late = across(scale, item.latestOn ?? end);
  const likely = item.likelyOn === null ? null : across(scale, item.likelyOn);
  // An item beyond the span may still fall due inside it.
  const mayEarlier = item.likelyOn === null && item.earliestOn !== null && item.earliestOn < end;
  return (
    <svg class="line" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
      <defs>
        <pattern id={`hatch-${item.id}`} width="1.2" height="10" patternUnits="userSpaceOnUse">
          <rect width="0.6" height="10" class="hatch" />
        </pattern>
      </defs>
      <rect x="0" y="3" width="100" height="4" class="track" />
      <rect x="0" y="3" width={mayEarlier ? across(scale, item.earliestOn!) : sure} height="4" class="run" />
      {(byHours || mayEarlier) && (
        <rect
          x={across(scale, item.earliestOn!)}
          y="2"
          width={Math.max(0.5, late - across(scale, item.earliestOn!))}
          height="6"
          fill={`url(#hatch-${item.id})`}
        />
      )}
      {bad && <rect x="0" y="1" width="1.2" height="8" class="bad" />}
      {likely !== null && !bad && <rect x={likely - 0.25} y="0" width="0.5" height="10" class="likely" />}
      {slotOn !== null && slotOn <= end && (
        <rect x={across(scale, slotOn) - 0.3} y="0" width="0.6" height="10" class="slot" />
      )}
    </svg>
  );
}
