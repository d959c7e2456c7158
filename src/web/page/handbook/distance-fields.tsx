import { Choice, FigureInput, figureOf, typed } from '../parts/fields.js';
import { GridFault, gridOf, gridText } from './grid.js';
import { type Distance, type DistanceTable, type Factor, FACTORS, type Factors } from './types.js';

interface TableDraft {
  weightLb: string;
  ground: string;
  over50: string;
}

/** Tables and factors as they are typed. */
export interface DistanceDraft {
  tables: TableDraft[];
  factors: Record<Factor, string>;
  surfaceIsOf: Factors['surfaceIsOf'];
}

const EMPTY: TableDraft = { weightLb: '', ground: '', over50: '' };

/** An empty form, or tables on record. */
export const distanceDraft = (of: Distance | undefined): DistanceDraft => ({
  tables: of?.tables.map(({ weightLb, groundRollFt, over50Ft, ...axes }) => ({
    weightLb: String(weightLb),
    ground: gridText({ ...axes, feet: groundRollFt }),
    over50: gridText({ ...axes, feet: over50Ft }),
  })) ?? [EMPTY],
  factors: Object.fromEntries(FACTORS.map(([key]) => [key, typed(of?.factors[key])])) as Record<
    Factor,
    string
  >,
  surfaceIsOf: of?.factors.surfaceIsOf ?? 'ground-roll',
});

/** What is sent. @throws GridFault naming the table that cannot be read */
export function distanceOf(draft: DistanceDraft, title: string): Distance {
  const grid = (text: string, what: string) => {
    try {
      return gridOf(text);
    } catch (error) {
      if (!(error instanceof GridFault)) throw error;
      throw new GridFault(`${title}, ${what}: ${error.message}`);
    }
  };
  const tables = draft.tables.map(({ weightLb, ground, over50 }): DistanceTable => {
    const roll = grid(ground, `ground roll at ${weightLb} lb`);
    const over = grid(over50, `over 50 ft at ${weightLb} lb`);
    const same = (a: number[], b: number[]): boolean => a.join() === b.join();
    if (
      !same(roll.temperaturesC, over.temperaturesC) ||
      !same(roll.pressureAltitudesFt, over.pressureAltitudesFt)
    )
      throw new GridFault(
        `${title} at ${weightLb} lb: both tables need the same temperatures and pressure altitudes.`,
      );
    const { feet: groundRollFt, ...axes } = roll;
    return { weightLb: Number(weightLb), ...axes, groundRollFt, over50Ft: over.feet };
  });
  const factors = Object.fromEntries(FACTORS.map(([key]) => [key, figureOf(draft.factors[key])])) as Record<
    Factor,
    number | null
  >;
  return { tables, factors: { ...factors, surfaceIsOf: draft.surfaceIsOf } };
}

/** Tables of take-off or landing, one for each weight, and what the handbook adds to them. */
export function DistanceFields({
  title,
  draft,
  set,
  mayWrite,
}: {
  title: string;
  draft: DistanceDraft;
  set: (draft: DistanceDraft) => void;
  mayWrite: boolean;
}) {
  const table = (at: number, part: Partial<TableDraft>) =>
    set({ ...draft, tables: draft.tables.map((one, other) => (other === at ? { ...one, ...part } : one)) });
  return (
    <fieldset>
      <legend>{title}</legend>
      {draft.tables.map((one, at) => (
        <div key={at} class="tables" role="group" aria-label={`${title}, table ${at + 1}`}>
          <FigureInput
            label="At a weight of, lb"
            value={one.weightLb}
            set={(weightLb) => table(at, { weightLb })}
            min={1}
            required
          />
          {(['ground', 'over50'] as const).map((which) => (
            <label key={which}>
              {which === 'ground' ? 'Ground roll' : 'Whole distance over 50 ft'}
              <textarea
                rows={Math.max(4, one[which].split('\n').length)}
                required
                spellcheck={false}
                value={one[which]}
                onInput={(event) => table(at, { [which]: event.currentTarget.value })}
              />
            </label>
          ))}
          {mayWrite && draft.tables.length > 1 && (
            <button
              type="button"
              class="quiet"
              onClick={() => set({ ...draft, tables: draft.tables.filter((_one, other) => other !== at) })}
            >
              Leave this weight out
            </button>
          )}
        </div>
      ))}
      {mayWrite && (
        <button
          type="button"
          class="quiet"
          onClick={() => set({ ...draft, tables: [...draft.tables, EMPTY] })}
        >
          Another weight
        </button>
      )}
      <details>
        <summary>What the handbook adds for wind, surface and slope</summary>
        <div class="fields">
          {FACTORS.map(([key, label]) => (
            <FigureInput
              key={key}
              label={label}
              value={draft.factors[key]}
              set={(value) => set({ ...draft, factors: { ...draft.factors, [key]: value } })}
              min={0}
            />
          ))}
          <Choice
            label="Surface, wet and slope are percent of"
            value={draft.surfaceIsOf}
            set={(surfaceIsOf) => set({ ...draft, surfaceIsOf })}
            of={[
              ['ground-roll', 'the ground roll'],
              ['distance', 'the whole distance'],
            ]}
          />
        </div>
        <p class="hint">Leave empty what the handbook does not say: then the pilot works it out.</p>
      </details>
    </fieldset>
  );
}
