import type { ComponentChildren } from 'preact';
import { Day } from '../parts/said.js';
import { clockIn, dateIn } from '../parts/time.js';
import { Table } from './table.js';
import type { Status, StatusItem } from './types.js';

const METERS = { hobbs: 'Hobbs', tachometer: 'Tachometer', airframe: 'Airframe time' } as const;
const hours = (value: number): string => `${value.toFixed(1)} h`;

/** A time with its year: paper is read long afterwards. */
export function Moment({ zone, at }: { zone: string; at: string }) {
  return (
    <>
      <Day date={dateIn(zone, at)} />, {clockIn(zone, at)}
    </>
  );
}

/** What the status says, section by section, in the order of paper. */
export function Sections({ of }: { of: Status }) {
  return (
    <>
      <Table
        title="Times"
        headings={['Meter', 'Shows', 'Running total', 'Read']}
        rows={of.times.map((time) => ({
          key: time.kind,
          cells: [
            <>
              {METERS[time.kind]} {time.countsForInspections && <small>counts for inspections</small>}
            </>,
            hours(time.shownH),
            hours(time.totalH),
            <Moment key="read" zone={of.zone} at={time.readAt} />,
          ],
        }))}
      />
      <Items title="Inspections, checks and the club’s own items" items={of.items} />
      <Items title="Airworthiness directives" items={of.directives} />
      <Table
        title="Open and deferred squawks"
        headings={['Squawk', 'Reported', 'State']}
        rows={of.squawks.map((squawk) => ({
          key: squawk.id,
          mark: squawk.state === 'grounding' ? 'overdue' : undefined,
          cells: [
            <>
              {squawk.title} <small>{squawk.detail}</small>
            </>,
            <Moment key="reported" zone={of.zone} at={squawk.reportedAt} />,
            <SquawkState of={squawk} />,
          ],
        }))}
      />
      <WeightTable of={of} />
      <Table
        title="Equipment list"
        headings={['Piece', 'Basis', 'Part, serial number', 'Weight', 'Arm', 'Installed']}
        rows={of.equipment.map((piece) => ({
          key: piece.id,
          cells: [
            <>
              {piece.name}{' '}
              <small>
                {[
                  piece.kind !== piece.name && piece.kind,
                  piece.requiredByTypeDesign && 'required by the type design',
                ]
                  .filter(Boolean)
                  .join(', ')}
              </small>
            </>,
            <>
              {piece.basis} {piece.document && <small>{piece.document}</small>}
            </>,
            [piece.partNumber, piece.serialNumber && `S/N ${piece.serialNumber}`]
              .filter(Boolean)
              .join(', ') || 'not on record',
            piece.weightLb === null ? 'not known' : `${piece.weightLb} lb`,
            piece.armIn === null ? 'not known' : `${piece.armIn} in`,
            <>
              <Day date={piece.installedOn} />
              {piece.removedOn && (
                <>
                  {' '}
                  to <Day date={piece.removedOn} />
                </>
              )}
            </>,
          ],
        }))}
      />
    </>
  );
}

function Items({ title, items }: { title: string; items: StatusItem[] }) {
  return (
    <Table
      title={title}
      headings={['Item', 'Interval', 'Last done', 'Next due', 'Left']}
      rows={items.map((item) => ({
        key: item.id,
        mark: item.state,
        cells: [
          <>
            {item.title}{' '}
            <small>
              {[item.reference, item.equipment && `on ${item.equipment.name}`].filter(Boolean).join(', ')}
            </small>
          </>,
          <Interval of={item} />,
          item.last === null ? (
            'Never, as far as the records go'
          ) : (
            <>
              <Day date={item.last.doneOn} />
              {item.last.doneH !== null && <>, {hours(item.last.doneH)}</>}{' '}
              <small>{item.last.signedBy}</small>
            </>
          ),
          <Due of={item} />,
          <Left of={item} />,
        ],
      }))}
    />
  );
}

function Interval({ of }: { of: StatusItem }) {
  const every = [
    of.intervalH !== null && hours(of.intervalH),
    of.calendarMonths !== null && `${of.calendarMonths} calendar months`,
    of.plainMonths !== null && `${of.plainMonths} months`,
    of.days !== null && `${of.days} days`,
  ].filter(Boolean);
  const parts: ComponentChildren[] = [];
  if (every.length > 0) parts.push(`every ${every.join(' or ')}`);
  if (of.fixedDueOn !== null)
    parts.push(
      <>
        by <Day date={of.fixedDueOn} />
      </>,
    );
  if (of.fixedDueH !== null) parts.push(`by ${hours(of.fixedDueH)}`);
  if (!of.recurring) parts.push('once');
  return (
    <>
      {parts.length === 0 ? 'not entered' : parts.map((part, index) => [index > 0 && '; ', part])}
      {of.scope !== 'all' && <small> binds: {of.scope}</small>}
    </>
  );
}

function Due({ of }: { of: StatusItem }) {
  if (of.state === 'settled') return <>Settled</>;
  if (of.nextDueOn === null && of.nextDueH === null)
    return <>{of.state === 'never-done' ? 'Now: never done' : 'Cannot be told'}</>;
  return (
    <>
      {of.nextDueOn !== null && <Day date={of.nextDueOn} />}
      {of.nextDueOn !== null && of.nextDueH !== null && ' or '}
      {of.nextDueH !== null && hours(of.nextDueH)}
    </>
  );
}

const STATES: Record<StatusItem['state'], string> = {
  overdue: 'Overdue',
  'never-done': 'Never done',
  unknown: 'Not known',
  settled: 'Nothing due',
  running: '',
};

/** '12 days', '3.2 h over' */
const left = (value: number, unit: string, digits: number): string =>
  value < 0 ? `${(-value).toFixed(digits)} ${unit} over` : `${value.toFixed(digits)} ${unit}`;

function Left({ of }: { of: StatusItem }) {
  const parts = [
    of.leftDays !== null && left(of.leftDays, 'days', 0),
    of.leftH !== null && left(of.leftH, 'h', 1),
  ].filter(Boolean);
  return (
    <>
      {STATES[of.state] && <strong>{STATES[of.state]}</strong>} {of.state !== 'settled' && parts.join(', ')}
    </>
  );
}

const SQUAWKS = {
  reported: 'Open, not yet judged',
  grounding: 'Grounds the aircraft',
  deferred: 'Deferred',
} as const;

function SquawkState({ of }: { of: Status['squawks'][number] }) {
  return (
    <>
      {SQUAWKS[of.state]}
      {of.deferredOn && (
        <>
          {' '}
          <Day date={of.deferredOn} />
        </>
      )}
      {of.deadlineOn && (
        <>
          , by <Day date={of.deadlineOn} />
        </>
      )}
      {of.openSteps.length > 0 && <small> not on record: {of.openSteps.join(', ')}</small>}
    </>
  );
}

function WeightTable({ of: { weight } }: { of: Status }) {
  const known = (value: number | null, unit: string): string =>
    value === null ? 'not known' : `${value} ${unit}`;
  return (
    <Table
      title="Empty weight and balance"
      headings={['Empty weight', 'Arm, aft of datum', 'Moment', 'Useful load', 'Found by']}
      rows={
        weight === null
          ? []
          : [
              {
                key: 'weight',
                cells: [
                  `${weight.emptyWeightLb} lb`,
                  known(weight.emptyArmIn, 'in'),
                  known(weight.emptyMomentLbIn, 'lb-in'),
                  known(weight.usefulLoadLb, 'lb'),
                  weight.effectiveOn === null ? (
                    'as entered with the aircraft'
                  ) : (
                    <>
                      {weight.source}, <Day date={weight.effectiveOn} /> <small>{weight.note}</small>
                    </>
                  ),
                ],
              },
            ]
      }
    />
  );
}
