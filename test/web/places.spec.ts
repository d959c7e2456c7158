/** Which links somebody finds, by role. */
import { placesFor, standingAt, type Place } from '../../src/web/page/nav/places.js';

const PAGES: Record<string, { place?: Place; under?: string }> = {
  '/rules': { place: { in: 'club', name: 'Rule book' } },
  '/': { place: { in: 'fly', name: 'Ask' } },
  '/practice': { place: { in: 'record', name: 'Practice' } },
  '/students': { place: { in: 'teach', name: 'Students', for: ['instructor'] } },
  '/board': {
    place: { in: 'safety', name: (roles) => (roles.includes('safety-officer') ? 'Board' : 'Reports') },
  },
  '/status': { under: '/rules' },
};
const shown = (...roles: string[]) =>
  placesFor(PAGES, roles).map(
    ({ title, places }) => `${title}: ${places.map(({ name }) => name).join(', ')}`,
  );

test('groups stand in one order, and one without a link for the reader is left out', () => {
  expect(shown('member')).toEqual(['Fly: Ask', 'My record: Practice', 'Safety: Reports', 'Club: Rule book']);
  expect(shown('member', 'instructor')).toContain('Teaching: Students');
  expect(shown('safety-officer')).toContain('Safety: Board');
  expect(placesFor({}, ['administrator'])).toEqual([]);
});

test('a page below another, and an address that is none, stand somewhere', () => {
  expect(standingAt(PAGES, '/practice')).toBe('/practice');
  expect(standingAt(PAGES, '/status')).toBe('/rules');
  expect(standingAt(PAGES, '/no-such-page')).toBe('/');
});
