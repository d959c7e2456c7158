import type { Remedy } from '../../../engine/remedy.js';
import { defineRule } from '../../../engine/rule.js';
import type { FlightFacts } from '../../../facts/flight.js';

/**
 * 14 CFR 91.107(a)(3), 91.9(a): each person aboard has a seat of their own, and no more are carried than the aircraft is
 * certificated for. What the request says of its crew must fit the number aboard: alone means one, instruction two.
 */
export const loadPersons = defineRule({
  id: 'load.persons',
  title: 'Persons on board',
  weight: 'law',
  binds: 'flight',
  reads: ['aircraft.type'],
  parameters: [],
  branches: {
    seated: { status: 'met', says: '{aboard} on board, {seats} seats.' },
    'too-many': {
      status: 'short',
      says: '{aboard} on board, but the aircraft has seats and approval for {seats} only.',
    },
    'nobody-flies': { status: 'short', says: 'The request has nobody on board.' },
    'not-alone': { status: 'short', says: 'The request says solo, but {aboard} are on board.' },
    'crew-missing': {
      status: 'short',
      says: 'The request needs at least {least} on board ({why}), but counts {aboard}.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.107(a)(3), 91.9(a), 91.109(c)',
        status: 'from memory',
        reading:
          'Children under two on a lap are counted as persons. A second pilot whom the request names as required crew is taken to be a safety pilot; that the pilot may act as one is a condition.',
      },
      judge(f, _moment, _p, take) {
        const type = f.get('aircraft.type');
        const { flight, crew } = f;
        const aboard = flight.personsOnBoard;
        const seats = Math.min(type.seats, type.occupantsCertificated);
        const values = { aboard, seats };
        if (aboard < 1)
          return take('nobody-flies', {}, { remedies: () => (seats >= 1 ? [count(flight, 1)] : []) });
        const why = [
          ...(crew.instruction ? ['learner and instructor'] : []),
          ...(flight.secondPilotId !== null ? ['two pilots'] : []),
        ];
        const least = why.length > 0 ? 2 : 1;
        if (flight.purpose === 'solo' && aboard > 1 && least === 1) {
          return take('not-alone', values, { remedies: () => [alone, ...asPassengers(aboard, seats)] });
        }
        if (flight.purpose === 'solo' && least > 1)
          return take('not-alone', { aboard: 'two pilots' }, { remedies: () => [alone] });
        if (aboard < least) {
          const remedies = () => (seats >= least ? [count(flight, least)] : []);
          return take('crew-missing', { aboard, least, why: why.join(', ') }, { remedies });
        }
        if (aboard > seats) {
          const remedies = () => (seats >= least ? [count(flight, seats)] : []);
          return take('too-many', values, { remedies });
        }
        const safetyPilot = flight.secondPilotId !== null && flight.secondPilotRequired && !crew.instruction;
        return take('seated', values, { conditions: safetyPilot ? [SAFETY_PILOT] : [] });
      },
    },
  ],
});

/** What the engine takes from the request: it judges the papers of the pilot in command alone. */
const SAFETY_PILOT =
  'Make sure that the second pilot may be safety pilot: at least a private pilot, rated for the category and class, with a medical that serves (14 CFR 61.3(c), 91.109(c)).';

/** Counts so many aboard: fewer leave people at home, more corrects the request. */
function count(flight: Pick<FlightFacts, 'personsOnBoard'>, persons: number): Remedy {
  const fewer = persons < flight.personsOnBoard;
  return {
    act: fewer ? 'take-fewer-persons' : 'correct-persons-on-board',
    title: fewer ? `Take ${persons} on board at most.` : `Correct the request: ${persons} on board.`,
    by: 'member',
    effects: [{ op: 'flight', fields: { personsOnBoard: persons } }],
  };
}

const alone: Remedy = {
  act: 'fly-alone',
  title: 'Fly alone.',
  by: 'member',
  effects: [
    {
      op: 'flight',
      fields: { personsOnBoard: 1, secondPilotId: null, secondPilotRequired: false, actingPilotId: null },
    },
  ],
};

const asPassengers = (aboard: number, seats: number): Remedy[] =>
  aboard > seats
    ? []
    : [
        {
          act: 'declare-passengers',
          title: 'Ask for the flight as one with passengers.',
          by: 'member',
          effects: [{ op: 'flight', fields: { purpose: 'passengers' } }],
        },
      ];
