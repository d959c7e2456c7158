import { Choice, FigureInput, figureOf, TextInput, typed } from '../parts/fields.js';
import type { Station } from './types.js';

/** A station as it is typed. */
export interface StationDraft {
  name: string;
  kind: Station['kind'];
  armIn: string;
  maxLb: string;
  seats: string;
  usableUsGal: string;
}

/** An empty row, or a station on record. */
export const stationDraft = (of: Station | null): StationDraft => ({
  ...{ name: of?.name ?? '', kind: of?.kind ?? 'seats', armIn: typed(of?.armIn), maxLb: typed(of?.maxLb) },
  ...{ seats: typed(of?.seats), usableUsGal: typed(of?.usableUsGal) },
});

/** What is sent. */
export const stationOf = (one: StationDraft) => ({
  ...{ name: one.name, kind: one.kind, armIn: Number(one.armIn), maxLb: figureOf(one.maxLb) },
  seats: one.kind === 'seats' ? figureOf(one.seats) : null,
  usableUsGal: one.kind === 'fuel' ? figureOf(one.usableUsGal) : null,
});

/** One station of the loading sheet. */
export function StationRow({
  at,
  station,
  set,
  remove,
}: {
  at: number;
  station: StationDraft;
  set: (station: StationDraft) => void;
  remove: (() => void) | null;
}) {
  const change = (part: Partial<StationDraft>) => set({ ...station, ...part });
  return (
    <div class="line fields" role="group" aria-label={`Station ${at}`}>
      <TextInput label="Name" value={station.name} set={(name) => change({ name })} max={60} required />
      <Choice
        label="Holds"
        value={station.kind}
        set={(kind) => change({ kind })}
        of={[
          ['seats', 'people'],
          ['fuel', 'fuel'],
          ['baggage', 'baggage'],
          ['other', 'something else'],
        ]}
      />
      <FigureInput
        label="Arm, in aft of datum"
        value={station.armIn}
        set={(armIn) => change({ armIn })}
        required
      />
      {station.kind === 'seats' && (
        <FigureInput
          label="Seats"
          value={station.seats}
          set={(seats) => change({ seats })}
          min={1}
          step="1"
          required
        />
      )}
      {station.kind === 'fuel' && (
        <FigureInput
          label="Usable, US gal"
          value={station.usableUsGal}
          set={(usableUsGal) => change({ usableUsGal })}
          required
        />
      )}
      <FigureInput label="Most, lb" value={station.maxLb} set={(maxLb) => change({ maxLb })} />
      {remove && (
        <button
          type="button"
          class="quiet"
          onClick={remove}
          aria-label={`Leave it out: station ${at}${station.name && `, ${station.name}`}`}
        >
          Leave it out
        </button>
      )}
    </div>
  );
}
