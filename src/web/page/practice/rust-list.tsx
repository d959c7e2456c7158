import { Said } from '../parts/said.js';
import type { RustList } from './types.js';

const wordOf = (rust: number): string =>
  rust >= 1 ? 'not on record' : rust >= 0.7 ? 'rusty' : rust >= 0.35 ? 'fading' : 'fresh';

/** What is rusty, the rustiest first; each with what was counted. */
export function RustListing({ list, zone }: { list: RustList; zone: string }) {
  return (
    <section aria-labelledby="rust">
      <h3 id="rust">What is rusty</h3>
      <p class="hint">{list.model}</p>
      <ul class="rust">
        {list.items.map((one) => (
          <li key={one.key} data-key={one.key}>
            <details>
              <summary>
                <span class="what">
                  {one.title} <small>{one.condition}</small>
                </span>
                <span class="bar" aria-hidden="true">
                  <span style={{ width: `${Math.round(one.rust * 100)}%` }} />
                </span>
                <span class="state">
                  {one.rust < 1 ? `${wordOf(one.rust)}, ${Math.round(one.rust * 100)} %` : wordOf(one.rust)}
                </span>
              </summary>
              <ul>
                {one.says.map((text) => (
                  <li key={text}>
                    <Said text={text} zone={zone} />
                  </li>
                ))}
                {one.halfLifeDays !== null && (
                  <li>
                    Half is lost in {one.halfLifeDays} days; spaced performances counted: {one.spaced}.
                  </li>
                )}
              </ul>
            </details>
          </li>
        ))}
      </ul>
      <p class="caution">{list.caution}</p>
    </section>
  );
}
