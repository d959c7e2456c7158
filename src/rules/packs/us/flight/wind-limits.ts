import { bestRunway } from '../../../air/wind.js';
import { defineRule } from '../../../engine/rule.js';
import { freshWeather } from './declared-weather.js';

/**
 * The wind across the best runway of the departure field, gusts counted, against the crosswind demonstrated at the
 * aircraft's certification. That is seldom a limitation, so this is advice. The declared wind is taken as true, as
 * observations give it, and so are the runways.
 */
export const windLimits = defineRule({
  id: 'wind.limits',
  title: 'Crosswind against the demonstrated crosswind',
  weight: 'advice',
  binds: 'flight',
  reads: ['aircraft.type'],
  parameters: ['us.weather.observation-hours'],
  branches: {
    'no-figure': { status: 'not-applicable', says: 'No demonstrated crosswind is on record for this model.' },
    'no-wind': { status: 'not-applicable', says: 'No recent wind is declared for the flight.' },
    'no-runway': { status: 'not-applicable', says: 'No runway is on record for the departure field.' },
    within: {
      status: 'met',
      says: 'Runway {runway}: {crosswind} kt across, {shown} kt demonstrated.',
    },
    beyond: {
      status: 'short',
      says: 'On the best runway, {runway}, {crosswind} kt blow across, more than the {shown} kt demonstrated; nothing but another wind cures it.',
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
          'A wind without a direction counts wholly across. A tower or a runway number gives magnetic directions: convert.',
      },
      judge(f, moment, p, take) {
        const shown = f.get('aircraft.type').demonstratedCrosswindKt;
        if (shown === null) return take('no-figure');
        const weather = freshWeather(f.flight.weather, moment, p.number('us.weather.observation-hours'));
        if (!weather || weather.windKt === null) return take('no-wind');
        const best = bestRunway(f.flight.route[0]?.runways ?? [], {
          fromDegTrue: weather.windFromDeg,
          kt: weather.windKt,
          gustKt: weather.gustKt,
        });
        if (!best) return take('no-runway');
        const crosswindKt = Math.abs(best.crosswindKt);
        const values = { runway: best.runway.designator, crosswind: crosswindKt.toFixed(1), shown };
        return take(crosswindKt > shown + 1e-9 ? 'beyond' : 'within', values);
      },
    },
  ],
});
