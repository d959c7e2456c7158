import { useEffect, useRef, useState } from 'preact/hooks';
import { ApiProblem, call } from '../api/client.js';
import type { Me } from '../api/types.js';
import { Link } from '../parts/link.js';
import { all } from '../session/session.js';
import { ChangeForm } from './change-form.js';
import { ChangeHistory } from './change-history.js';
import './equipment.css';
import type { Change, Piece } from './types.js';
import { Refusal } from '../parts/refusal.js';

interface AircraftHead {
  id: string;
  registration: string;
  model: { makeModel: string };
}

/** The equipment of one aircraft: what is in it, the changes that brought it about, and a new one with its preview. */
export function EquipmentPage({ me, aircraftId }: { me: Me; aircraftId: string }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [aircraft, setAircraft] = useState<AircraftHead | null>(null);
  const [pieces, setPieces] = useState<Piece[]>([]);
  const [changes, setChanges] = useState<Change[]>([]);
  const [problem, setProblem] = useState<string | null>(null);

  const read = async () => {
    try {
      setAircraft(await call<AircraftHead>('GET', `/aircraft/${aircraftId}`));
      setPieces(await all<Piece>(`/aircraft/${aircraftId}/equipment`));
      setChanges(await all<Change>(`/aircraft/${aircraftId}/equipment-changes`));
    } catch (error) {
      if (!(error instanceof ApiProblem)) throw error;
      setProblem(error.problem.detail);
    }
  };
  useEffect(() => {
    void read();
    heading.current?.focus();
  }, [aircraftId]);

  const mayChange = me.roles.includes('maintenance-coordinator');
  const fitted = pieces.filter(({ removedOn }) => removedOn === null);
  return (
    <main class="page equipment">
      <p>
        <Link to="/maintenance">Hours and days left</Link>
      </p>
      <h2 ref={heading} tabIndex={-1}>
        Equipment {aircraft && `of ${aircraft.registration}`}{' '}
        {aircraft && <small>{aircraft.model.makeModel}</small>}
      </h2>
      <Refusal problem={problem} />
      {mayChange && aircraft && (
        <ChangeForm aircraftId={aircraftId} fitted={fitted} zone={me.club.zone} made={() => void read()} />
      )}
      {!mayChange && (
        <ul class="fitted">
          {fitted.map((piece) => (
            <li key={piece.id}>
              {piece.name} {piece.portable && <span class="chip">portable</span>}
            </li>
          ))}
        </ul>
      )}
      <ChangeHistory
        aircraftId={aircraftId}
        changes={changes}
        mayTakeBack={mayChange}
        done={() => void read()}
      />
    </main>
  );
}
