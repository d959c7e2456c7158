import { Link } from '../parts/link.js';
import type { Found } from './places.js';

/** Links to pages; `at` is the one that leads to where the reader is. */
export function LinkList({ places, at, class: of }: { places: Found[]; at: string; class?: string }) {
  return (
    <ul class={of}>
      {places.map(({ to, name }) => (
        <li key={to}>
          <Link to={to} class={to === at ? 'here' : undefined}>
            {name}
          </Link>
        </li>
      ))}
    </ul>
  );
}
