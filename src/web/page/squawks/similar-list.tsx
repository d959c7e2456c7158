import { dayIn } from '../parts/time.js';
import type { Similar } from './types.js';
import { STATE_WORDS } from './words.js';

/** Open squawks that may be the same fault, offered while somebody writes. */
export function SimilarList({ items, zone }: { items: Similar['items']; zone: string }) {
  return (
    <div class="similar" role="status">
      {items.length > 0 && (
        <>
          <p>May be reported already. If it is one of these and there is nothing to add, you are done.</p>
          <ul>
            {items.map(({ squawk, sameEquipment }) => (
              <li key={squawk.id}>
                <strong>{squawk.title}</strong> {STATE_WORDS[squawk.state].toLowerCase()}, reported{' '}
                {dayIn(zone, squawk.reportedAt)}
                {sameEquipment && ', about the same equipment'}
              </li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}
