import { useState } from 'preact/hooks';
import { across, dayOf, monthOf, monthsOf, type Scale } from '../maintenance/scale.js';
import { useWidth } from '../timeline/use-width.js';
import type { Lapse, Lapses } from './types.js';

const ROW = 24;
const HEAD = 54;
const AT_FIRST = 30;
const MORE = 60;

/**
 * People down, time across. A lapse of law is a disc, one of the club a diamond; a number in it counts the booked flights
 * it costs. Above, all lapses by week. The table below says the same in words.
 */
export function LapsePicture({ found, lapses }: { found: Lapses; lapses: Lapse[] }) {
  const { ref, width } = useWidth<HTMLDivElement>();
  const [most, setMost] = useState(AT_FIRST);
  const scale: Scale = { from: found.from, days: daysOf(found) };
  const people = [...new Set(lapses.map(({ memberId }) => memberId))];
  const shown = people.slice(0, most);
  const names = width < 600 ? 110 : 190;
  const x = (date: string): number => names + 10 + (across(scale, date) / 100) * (width - names - 26);
  const height = HEAD + shown.length * ROW + 6;
  return (
    <div ref={ref} class="lapse-picture">
      <p class="legend" aria-hidden="true">
        <svg width="16" height="16">
          <circle class="law" cx="8" cy="8" r="6" />
        </svg>{' '}
        law{' '}
        <svg width="16" height="16">
          <path class="club" d="M8 1l7 7-7 7-7-7z" />
        </svg>{' '}
        club. A number counts booked flights lost; the grey columns count lapses by week.
      </p>
      {width > 0 && (
        <svg
          width={width}
          height={height}
          role="img"
          aria-label={`Lapses of ${people.length} members from ${dayOf(found.from)} to ${dayOf(found.through)}; the table below says the same`}
        >
          <Weeks lapses={lapses} days={scale.days} x0={x(found.from)} x1={x(found.through)} />
          {monthsOf(scale).map((first) => (
            <g key={first}>
              <line class="tick-line" x1={x(first)} x2={x(first)} y1={HEAD - 8} y2={height} />
              <text x={x(first) + 3} y={HEAD - 6} class="tick-word">
                {monthOf(first)}
              </text>
            </g>
          ))}
          {shown.map((memberId, row) => (
            <Person
              key={memberId}
              of={lapses.filter((one) => one.memberId === memberId)}
              y={HEAD + row * ROW + ROW / 2}
              names={names}
              x={x}
              from={found.from}
              striped={row % 2 === 0}
              width={width}
            />
          ))}
        </svg>
      )}
      {people.length > shown.length && (
        <button type="button" class="quiet" onClick={() => setMost(most + MORE)}>
          Draw {Math.min(MORE, people.length - shown.length)} more of {people.length} members
        </button>
      )}
    </div>
  );
}

const daysOf = ({ from, through }: Lapses): number =>
  Math.round((Date.parse(through) - Date.parse(from)) / 86_400_000);

function Weeks({ lapses, days, x0, x1 }: { lapses: Lapse[]; days: number; x0: number; x1: number }) {
  const counts: number[] = Array<number>(Math.ceil((days + 1) / 7)).fill(0);
  for (const { inDays } of lapses) counts[Math.floor(inDays / 7)]! += 1;
  const top = Math.max(...counts);
  const wide = ((x1 - x0) / Math.max(1, days)) * 7;
  return (
    <>
      {counts.map((count, week) => (
        <rect
          key={week}
          class="week"
          x={x0 + week * wide + 1}
          width={Math.max(1, Math.min(wide - 2, x1 + 8 - x0 - week * wide))}
          y={HEAD - 20 - (count / top) * 30}
          height={(count / top) * 30}
        >
          <title>{count}</title>
        </rect>
      ))}
    </>
  );
}

function Person({
  of,
  y,
  names,
  x,
  from,
  striped,
  width,
}: {
  of: Lapse[];
  y: number;
  names: number;
  x: (date: string) => number;
  from: string;
  striped: boolean;
  width: number;
}) {
  const { memberName } = of[0]!;
  const most = Math.floor(names / 8.2);
  const last = of.at(-1)!;
  return (
    <g>
      {striped && <rect class="stripe" x={0} width={width} y={y - ROW / 2} height={ROW} />}
      <text x={4} y={y + 4} class="person">
        {memberName.length > most ? `${memberName.slice(0, most - 1)}…` : memberName}
      </text>
      <line class="good" x1={x(from)} x2={x(last.on)} y1={y} y2={y} />
      {of.map((one) => (
        <Dot key={`${one.rule}${one.on}${one.aircraft?.join() ?? ''}`} of={one} cx={x(one.on)} cy={y} />
      ))}
    </g>
  );
}

function Dot({ of, cx, cy }: { of: Lapse; cx: number; cy: number }) {
  const { costs, weight, title, on } = of;
  const r = costs.length > 0 ? 9 : 6;
  return (
    <g>
      <title>{`${dayOf(on)}: ${title}${costs.length > 0 ? `, ${costs.length} booked flights lost` : ''}`}</title>
      {weight === 'law' ? (
        <circle class="law" cx={cx} cy={cy} r={r} />
      ) : (
        <path
          class="club"
          d={`M${cx} ${cy - r - 1}l${r + 1} ${r + 1}-${r + 1} ${r + 1}-${r + 1}-${r + 1}z`}
        />
      )}
      {costs.length > 0 && (
        <text x={cx} y={cy + 4} class="count">
          {costs.length}
        </text>
      )}
    </g>
  );
}
