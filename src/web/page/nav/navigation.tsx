import { useEffect, useRef, useState } from 'preact/hooks';
import type { Me } from '../api/types.js';
import { Bell } from '../notices/bell.js';
import { Link } from '../parts/link.js';
import { Mark } from '../parts/mark.js';
import { place } from '../parts/route.js';
import { signOut } from '../session/session.js';
import './nav.css';
import { placesFor, standingAt, type Place } from './places.js';

/** Puts the keyboard into the page that is shown, past the links. */
const intoPage = () => {
  const main = [...document.querySelectorAll('main')].find((one) => one.offsetParent !== null);
  if (main === undefined) return;
  main.tabIndex = -1;
  main.focus();
};

/** The head of every page. At a desk all links stand in their groups; on a phone they are behind one button. */
export function Navigation({
  me,
  pages,
}: {
  me: Me;
  pages: Readonly<Record<string, { place?: Place; under?: string }>>;
}) {
  const [open, setOpen] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const { path } = place.value;
  const groups = placesFor(pages, me.roles);
  const at = standingAt(pages, path);
  const here = groups.flatMap(({ places }) => places).find(({ to }) => to === at)?.name;

  useEffect(() => {
    setOpen(false);
    document.title = here === undefined ? 'Bellcrank' : `${here} · Bellcrank`;
  }, [path, here]);

  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || !open) return;
    setOpen(false);
    button.current?.focus();
  };

  return (
    <header class="top" onKeyDown={onKeyDown}>
      <button class="skip" onClick={intoPage}>
        Skip to the page
      </button>
      <h1 class="name">
        <Mark /> Bellcrank
      </h1>
      <Bell />
      <button
        ref={button}
        class="where"
        aria-expanded={open}
        aria-controls="places"
        aria-label={`${here ?? 'Pages'}, all pages`}
        onClick={() => setOpen(!open)}
      >
        <span class="lines" aria-hidden="true" />
        {here ?? 'Pages'}
      </button>
      <div id="places" class={open ? 'places shown' : 'places'}>
        <span class="club">{me.club.name}</span>
        <span class="who">
          {me.name}
          <button class="quiet" onClick={() => void signOut()}>
            Sign out
          </button>
        </span>
        <nav aria-label="Pages">
          {groups.map(({ group, title, places }) => (
            <div key={group} class="group" role="group" aria-labelledby={`group-${group}`}>
              <span id={`group-${group}`} class="title">
                {title}
              </span>
              <ul>
                {places.map(({ to, name }) => (
                  <li key={to} onClick={() => setOpen(false)}>
                    <Link to={to} class={to === at ? 'here' : undefined}>
                      {name}
                    </Link>
                  </li>
                ))}
              </ul>
            </div>
          ))}
        </nav>
      </div>
    </header>
  );
}
