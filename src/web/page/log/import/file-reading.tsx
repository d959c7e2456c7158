import { Choice, TextInput, Tick } from '../../parts/fields.js';
import { ColumnList } from './column-list.js';
import { KindList } from './kind-list.js';
import type { Choices, Preview } from './types.js';
import { CLOCKS, DATES, DECIMALS, DELIMITERS, ENCODINGS, ROLES } from './words.js';

/** How the file is read: what was found out, all of it to be changed, and what is still asked. */
export function FileReading({
  of,
  choices,
  choose,
}: {
  of: Preview;
  choices: Choices;
  choose: (choices: Choices) => void;
}) {
  const change = (what: Choices) => choose({ ...choices, ...what });
  // Nothing chosen is not said, so that it is found out anew.
  const word = (name: 'dates' | 'decimal' | 'clock' | 'role') => ({
    value: choices[name] ?? '',
    set: (value: string) => change({ [name]: value === '' ? undefined : value }),
  });
  const has = (field: string) => choices.columns?.some((column) => column.field === field) ?? false;
  const timed = has('departedAt') || has('arrivedAt');
  return (
    <section class="reading" aria-label="How the file is read">
      {of.questions.length > 0 && (
        <div class="problem" role="alert">
          <p>Before its rows can be read:</p>
          <ul>
            {of.questions.map(({ says }) => (
              <li key={says}>{says}</li>
            ))}
          </ul>
        </div>
      )}
      {of.remembered && <p role="status">Read as the last file with the same headings was.</p>}
      <div class="row">
        <Choice label="Dates" {...word('dates')} of={DATES} />
        <Choice label="Decimals begin with" {...word('decimal')} of={DECIMALS} />
        {timed && <Choice label="Times are by" {...word('clock')} of={CLOCKS} />}
        <TextInput
          label={choices.clock === 'zone' ? 'Zone of the times' : 'Zone of the days'}
          value={choices.zone ?? ''}
          set={(zone) => change({ zone: zone === '' ? undefined : zone })}
          max={60}
        />
        <Choice label="Role, where the file tells none" {...word('role')} of={ROLES} />
      </div>
      {!has('soleManipulator') && (
        <Tick value={choices.soleManipulator === true} set={(soleManipulator) => change({ soleManipulator })}>
          I handled the controls alone in all of them but those I taught
        </Tick>
      )}
      {!has('takeoffs') && !has('dayTakeoffs') && (
        <Tick
          value={choices.takeoffsAsLandings === true}
          set={(takeoffsAsLandings) => change({ takeoffsAsLandings })}
        >
          Each flight had as many take-offs as landings
        </Tick>
      )}
      {of.kinds.length > 0 && (
        <KindList of={of.kinds} told={choices.kinds ?? []} set={(kinds) => change({ kinds })} />
      )}
      <details open={of.questions.some(({ choice }) => choice === 'columns')}>
        <summary>
          {of.columns.filter(({ field }) => field !== null).length} of {of.columns.length} columns are taken
          over: look, and change
        </summary>
        <ColumnList of={of.columns} columns={choices.columns ?? []} set={(columns) => change({ columns })} />
        <div class="row">
          <Choice
            label="Characters"
            value={choices.encoding ?? 'utf-8'}
            set={(encoding) => change({ encoding })}
            of={ENCODINGS}
          />
          {of.delimiter !== null && (
            <Choice
              label="Cells are parted by"
              value={choices.delimiter ?? ','}
              // Other cells are other columns.
              set={(delimiter) => change({ delimiter, columns: undefined, headingLine: undefined })}
              of={DELIMITERS}
            />
          )}
        </div>
      </details>
    </section>
  );
}
