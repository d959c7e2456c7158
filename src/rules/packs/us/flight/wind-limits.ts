import { bestRunway } from '../../../air/wind.js';
import { defineRule } from '../../../engine/rule.js';
import { SPEAKS } from '../../../parameters/club/weather.js';
import { windsOf } from '../../common/shared/winds.js';

/**
 * The wind across the best runway at departure and arrival, gusts counted, against the crosswind demonstrated at the
 * aircraft's certification. That is seldom a limitation, so this is advice. The declared wind is taken as true, as
 * observations and forecasts give it, and so are the runways.
 */
export const windLimits = defineRule({
  id: 'wind.limits',
  title: 'Crosswind against the demonstrated crosswind',
  weight: 'advice',
  binds: 'flight',
  reads: ['aircraft.type'],
  parameters: ['us.weather.observation-hours', ...SPEAKS],
  branches: {
    'no-figure': { status: 'not-applicable', says: 'No demonstrated crosswind is on record for this model.' },
    'no-wind': {
      status: 'not-applicable',
      says: 'No recent wind is told, reported or forecast for the flight.',
    },
    'no-runway': { status: 'not-applicable', says: 'No runway is on record where the wind is known.' },
    within: {
      status: 'met',
      says: 'Runway {runway} at {airfield}: {crosswind} kt across, {shown} kt demonstrated.',
    },
    beyond: {
      status: 'short',
      says: 'On the best runway, {runway} at {airfield}, {crosswind} kt blow across, more than the {shown} kt demonstrated; nothing but another wind cures it.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Demonstrated crosswind, from the flight manual; components by trigonometry',
        status: 'common practice, no source',
        reading:
          'A wind without a direction counts wholly across. Told or reported winds count for the departure, else the forecast; what reports and forecasts say of the arrival counts too. A tower or a runway number gives magnetic directions: convert.',
      },
      judge(f, moment, p, take) {
        const shown = f.get('aircraft.type').demonstratedCrosswindKt;
        if (shown === null) return take('no-figure');
        const told = windsOf(f.flight, moment, p, p.number('us.weather.observation-hours'));
        if (!told) return take('no-runway');
        const spoken = told.filter(({ winds }) => winds.length > 0);
        if (spoken.length === 0) return take('no-wind');
        const across = spoken.flatMap(({ airfield, where, winds }) =>
          winds.flatMap((wind) => {
            const best = bestRunway(airfield.runways, wind);
            return best ? [{ where, runway: best.runway.designator, kt: Math.abs(best.crosswindKt) }] : [];
          }),
        );
        const [first] = across;
        if (!first) return take('no-runway');
        const most = across.reduce((worst, one) => (one.kt > worst.kt + 1e-9 ? one : worst), first);
        const values = { runway: most.runway, airfield: most.where, crosswind: most.kt.toFixed(1), shown };
        return take(most.kt > shown + 1e-9 ? 'beyond' : 'within', values);
      },
    },
  ],
});
