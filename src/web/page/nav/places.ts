/**
 * How pages are found: by what somebody comes for. A page names its group and its link once, in the map of pages; what each
 * person is shown follows from that and from the roles.
 */

/** In the order they stand in. Links of `fly` are always in sight; `own` is what somebody looks for under their name. */
const GROUPS = {
  fly: 'Fly',
  record: 'My record',
  teach: 'Teaching',
  fleet: 'Fleet',
  safety: 'Safety',
  club: 'Club',
  own: 'Me',
};

export type Group = keyof typeof GROUPS;

/** The link to a page. A page without one is reached from another, which it names as `under`. */
export interface Place {
  in: Group;
  name: string | ((roles: readonly string[]) => string);
  /** Who has a use for it; without it, everybody. This hides a link and guards nothing: the service does. */
  for?: readonly string[];
}

export interface Found {
  to: string;
  name: string;
}

export interface FoundGroup {
  group: Group;
  title: string;
  places: Found[];
}

/** The links for somebody with these roles, in groups; a group without any is left out. */
export function placesFor(
  pages: Readonly<Record<string, { place?: Place }>>,
  roles: readonly string[],
): FoundGroup[] {
  const found = Object.entries(pages).flatMap(([to, { place }]) =>
    place && (place.for === undefined || place.for.some((role) => roles.includes(role)))
      ? [{ to, in: place.in, name: typeof place.name === 'string' ? place.name : place.name(roles) }]
      : [],
  );
  return (Object.keys(GROUPS) as Group[])
    .map((group) => ({
      group,
      title: GROUPS[group],
      places: found.filter((one) => one.in === group).map(({ to, name }) => ({ to, name })),
    }))
    .filter(({ places }) => places.length > 0);
}

/** The link that leads to where the reader is, if the page is in the list; a page below another counts as there. */
export function standingAt(
  pages: Readonly<Record<string, { place?: Place; under?: string }>>,
  path: string,
): string {
  const page = pages[path];
  if (page === undefined) return '/';
  return page.place === undefined && page.under !== undefined ? page.under : path;
}
