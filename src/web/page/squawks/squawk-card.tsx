import { useState } from 'preact/hooks';
import type { Me } from '../api/types.js';
import { Day } from '../parts/said.js';
import { momentIn } from '../parts/time.js';
import { History } from './history.js';
import { PhotoRow } from './photo-row.js';
import { Triage } from './triage.js';
import type { Equipment, Squawk } from './types.js';
import { STATE_WORDS } from './words.js';

interface Props {
  squawk: Squawk;
  others: Squawk[];
  equipment: Equipment[];
  reporter: string;
  me: Me;
  changed(): void;
}

/** One squawk with all that is known of it, and for the coordinator what can be decided. */
export function SquawkCard({ squawk, others, equipment, reporter, me, changed }: Props) {
  const [deciding, setDeciding] = useState(false);
  const { zone } = me.club;
  const about = equipment.find(({ id }) => id === squawk.equipmentId);
  const keptIn = others.find(({ id }) => id === squawk.duplicateOf);
  return (
    <article class={`squawk ${squawk.state}`} data-squawk={squawk.title} aria-labelledby={`s-${squawk.id}`}>
      <h4 id={`s-${squawk.id}`}>
        {squawk.title} <span class="state">{STATE_WORDS[squawk.state]}</span>
      </h4>
      <p class="meta">
        Reported {momentIn(zone, squawk.reportedAt)} by {reporter}
        {about && <> · {about.name}</>}
        {squawk.duplicates.length > 0 && <> · {squawk.duplicates.length} more reports of it</>}
        {keptIn && <> · kept in “{keptIn.title}”</>}
      </p>
      {squawk.detail !== '' && <p>{squawk.detail}</p>}
      {squawk.deferral && (
        <p>
          {squawk.deferral.deadlineOn ? (
            <>
              Deferred until <Day date={squawk.deferral.deadlineOn} />.
            </>
          ) : (
            'Deferred without a last day.'
          )}{' '}
          {squawk.deferral.openSteps.length > 0 &&
            `${squawk.deferral.openSteps.length} steps are still open.`}
        </p>
      )}
      {squawk.correctiveAction && (
        <p>
          {squawk.correctiveAction}. Signed as entered: {squawk.signedBy}
          {squawk.signedCertificate && `, ${squawk.signedCertificate}`}.
        </p>
      )}
      {squawk.parts.length > 0 && (
        <ul class="parts-used" aria-label="Parts used">
          {squawk.parts.map((part) => (
            <li key={part.partNumber}>
              {part.quantity} × {part.name}, {part.partNumber}
              {part.serialNumber && `, serial ${part.serialNumber}`}
            </li>
          ))}
        </ul>
      )}
      <PhotoRow of={squawk} />
      <div class="acts">
        {me.roles.includes('maintenance-coordinator') && (
          <button class="quiet" aria-expanded={deciding} onClick={() => setDeciding(!deciding)}>
            {deciding ? 'Leave it' : 'Decide'}
          </button>
        )}
      </div>
      {deciding && (
        <Triage
          squawk={squawk}
          others={others}
          zone={zone}
          changed={() => {
            setDeciding(false);
            changed();
          }}
        />
      )}
      <History of={squawk} zone={zone} />
    </article>
  );
}
