import { useEffect } from 'preact/hooks';
import type { Me } from '../api/types.js';
import { Bell } from '../notices/bell.js';
import { Mark } from '../parts/mark.js';
import { place } from '../parts/route.js';
import { DeskBar } from './desk-bar.js';
import './nav.css';
import { PhoneBar } from './phone-bar.js';
import { placesFor, standingAt, type Place } from './places.js';
import { useWide } from './use-wide.js';

/** Puts the keyboard into the page that is shown, past the links. */
const intoPage = () => {
  const main = [...document.querySelectorAll('main')].find((one) => one.offsetParent !== null);
  if (main === undefined) return;
  main.tabIndex = -1;
  main.focus();
};

/** The head of every page: whose club it is, what is new, and the way to every other page. */
export function Navigation({
  me,
  pages,
}: {
  me: Me;
  pages: Readonly<Record<string, { place?: Place; under?: string }>>;
}) {
  const { path } = place.value;
  const groups = placesFor(pages, me.roles);
  const at = standingAt(pages, path);
  const here = groups.flatMap(({ places }) => places).find(({ to }) => to === at)?.name;
  const wide = useWide();

  useEffect(() => {
    document.title = here === undefined ? 'Bellcrank' : `${here} · Bellcrank`;
  }, [path, here]);

  return (
    <header class="top">
      <button class="skip" onClick={intoPage}>
        Skip to the page
      </button>
      <div class="brand">
        <h1 class="name">
          <Mark /> Bellcrank
        </h1>
        <span class="club">{me.club.name}</span>
      </div>
      {wide && <DeskBar me={me} groups={groups} at={at} path={path} />}
      <Bell />
      {!wide && <PhoneBar me={me} groups={groups} at={at} path={path} />}
    </header>
  );
}
