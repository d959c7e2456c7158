import { useEffect, useRef, useState } from 'preact/hooks';
import type { Me } from '../api/types.js';
import { LinkList } from './link-list.js';
import type { FoundGroup } from './places.js';
import { SignOut } from './sign-out.js';

/** As many links as 360 pixels hold. */
const IN_SIGHT = 4;

/** What flying asks for stands under a thumb; one button opens all the rest in its groups. */
export function PhoneBar({
  me,
  groups,
  at,
  path,
}: {
  me: Me;
  groups: FoundGroup[];
  at: string;
  path: string;
}) {
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => setOpen(false), [path]);
  const [fly, ...rest] = groups;
  const more = fly && fly.places.length > IN_SIGHT ? [{ ...fly, places: fly.places.slice(IN_SIGHT) }] : [];
  const behind = [...more, ...rest];

  return (
    <nav
      aria-label="Pages"
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || !open) return;
        setOpen(false);
        button.current?.focus();
      }}
    >
      {fly && <LinkList class="links" places={fly.places.slice(0, IN_SIGHT)} at={at} />}
      <button
        ref={button}
        class={behind.some(({ places }) => places.some(({ to }) => to === at)) ? 'where here' : 'where'}
        aria-expanded={open}
        aria-controls="places"
        onClick={() => setOpen(!open)}
      >
        <span class="lines" aria-hidden="true" />
        More
      </button>
      <div id="places" hidden={!open}>
        {behind.map(({ group, title, places }) => (
          <div key={group} class="group" role="group" aria-labelledby={`group-${group}`}>
            <span id={`group-${group}`} class="title">
              {group === 'own' ? me.name : title}
            </span>
            <LinkList places={places} at={at} />
            {group === 'own' && <SignOut />}
          </div>
        ))}
      </div>
    </nav>
  );
}
