/** A country's own law for rules that hold everywhere: none of law is taken over without it. */
import { citedBy } from '../../src/rules/packs/common/cited.js';
import { clubItems } from '../../src/rules/packs/common/items/club-items.js';
import { loadPersons } from '../../src/rules/packs/common/loading/persons.js';

const LAW = { text: 'a law of the country', status: 'seen' } as const;

test('a rule of law without a law of the country is refused', () => {
  expect(() => citedBy([loadPersons], {})).toThrow('no law of this country is cited for load.persons');
});

test('with one it cites that law and judges as before', () => {
  const [rule] = citedBy([loadPersons], { 'load.persons': LAW });
  expect(rule).toEqual({
    ...loadPersons,
    bodies: loadPersons.bodies.map((body) => ({ ...body, citation: LAW })),
  });
});

test('a rule of the club cites the club everywhere', () => {
  expect(citedBy([clubItems], {})).toEqual([clubItems]);
});
