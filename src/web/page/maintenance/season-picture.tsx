import { dayOf, monthOf } from './scale.js';
import type { Season, SeasonVisit } from './season-types.js';

/** Weeks across, aircraft down; a visit is a button that says what it is, and work that waits for it is marked by shape too. */
export function SeasonPicture({
  season,
  chosen,
  choose,
  keyOf,
}: {
  season: Season;
  chosen: string | null;
  choose: (key: string) => void;
  keyOf: (visit: SeasonVisit) => string;
}) {
  const { weeks, visits } = season;
  const aircraft = [...new Set(visits.map(({ registration }) => registration))];
  const at = (monday: string): number => weeks.indexOf(monday);
  return (
    <div class="picture" tabIndex={0} role="group" aria-label="Shop visits by week">
      <div class="grid" style={{ gridTemplateColumns: `6.5em repeat(${weeks.length}, minmax(1.5em, 1fr))` }}>
        {weeks.map((monday, index) =>
          index === 0 || monthOf(monday) !== monthOf(weeks[index - 1]!) ? (
            <span key={monday} class="month" style={{ gridColumn: index + 2, gridRow: 1 }}>
              {monthOf(monday)}
            </span>
          ) : null,
        )}
        {aircraft.map((registration, row) => (
          <Row key={registration} registration={registration} row={row + 2} weeks={weeks.length} />
        ))}
        {visits.map((visit) => (
          <button
            key={keyOf(visit)}
            class={`visit${visit.work.some(({ kind }) => kind === 'wish') ? ' with-wish' : ''}`}
            data-count={visit.work.length || '·'}
            aria-pressed={keyOf(visit) === chosen}
            style={{
              gridColumn: `${at(visit.from) + 2} / ${at(visit.to) + 3}`,
              gridRow: aircraft.indexOf(visit.registration) + 2,
            }}
            title={visit.work.map(({ title }) => title).join(', ')}
            aria-label={`${visit.registration}, week of ${dayOf(visit.from)}: ${visit.work.map(({ title }) => title).join(', ') || 'booked'}`}
            onClick={() => choose(keyOf(visit))}
          />
        ))}
      </div>
    </div>
  );
}

function Row({ registration, row, weeks }: { registration: string; row: number; weeks: number }) {
  return (
    <>
      <span class="who-row" style={{ gridColumn: 1, gridRow: row }}>
        {registration}
      </span>
      <span class="lane-row" style={{ gridColumn: `2 / ${weeks + 2}`, gridRow: row }} aria-hidden="true" />
    </>
  );
}
