import { useEffect, useState } from 'preact/hooks';
import type { Me } from '../api/types.js';
import { LinkList } from './link-list.js';
import { Menu } from './menu.js';
import type { FoundGroup } from './places.js';
import { SignOut } from './sign-out.js';

/** One row: what flying asks for in sight, the rest in menus, one's own things under one's name. */
export function DeskBar({
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
  const [open, setOpen] = useState<string | null>(null);
  useEffect(() => setOpen(null), [path]);
  return (
    <nav aria-label="Pages">
      {groups.map(({ group, title, places }) =>
        // A menu with one link in it would be a press for nothing.
        group !== 'own' && (group === 'fly' || places.length === 1) ? (
          <LinkList key={group} class="links" places={places} at={at} />
        ) : (
          <div key={group} class={group}>
            <Menu
              id={group}
              label={group === 'own' ? me.name : title}
              here={places.some(({ to }) => to === at)}
              open={open === group}
              set={(to) => setOpen((was) => (to ? group : was === group ? null : was))}
            >
              <LinkList places={places} at={at} />
              {group === 'own' && <SignOut />}
            </Menu>
          </div>
        ),
      )}
    </nav>
  );
}
