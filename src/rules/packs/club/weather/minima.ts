import { defineRule } from '../../../engine/rule.js';
import { UnknownFact } from '../../../engine/unknown.js';
import { SPEAKS } from '../../../parameters/club/weather.js';
import { PHASE_WORDS, type PhaseWeather } from '../../../weather/phases.js';
import { conditionWords, worstOf } from '../../../weather/worst.js';
import { countedReports, phasesOf } from '../../common/shared/phases.js';

const CEILING = 'club.weather.ceiling-ft';
const VISIBILITY = 'club.weather.visibility-sm';

/**
 * Club rule: what reports and forecasts say prevails in each phase of a VFR flight is no worse than the club's least. What may
 * pass through (TEMPO, PROB) is a condition, and so is whatever nothing speaks of.
 */
export const weatherMinima = defineRule({
  id: 'club.weather_minima',
  title: 'Reported and forecast weather',
  weight: 'club',
  binds: 'flight',
  settledAt: 'departure',
  whenUnknown: 'Check the weather before departure.',
  reads: [],
  parameters: [CEILING, VISIBILITY, ...SPEAKS],
  branches: {
    'no-reports': {
      status: 'not-applicable',
      says: 'No report or forecast is at hand; other rules ask for the weather.',
    },
    ifr: { status: 'met', says: 'The club asks for no ceiling or visibility under IFR.' },
    enough: {
      status: 'met',
      says: 'As far as reports and forecasts speak, ceiling and visibility prevail at {ceiling} ft and {visibility} SM or better.',
    },
    'low-visibility': {
      status: 'short',
      says: 'For {phase} at {airfield} a visibility of {found} SM is reported or forecast, less than {visibility} SM; it is better weather that cures it.',
    },
    'low-ceiling': {
      status: 'short',
      says: 'For {phase} at {airfield} a ceiling of {found} ft is reported or forecast, lower than {ceiling} ft; it is better weather that cures it.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Club handbook, section 6.3',
        status: 'club paper',
        reading:
          'While one weather becomes another (BECMG) the worse counts. A visibility of less than a figure promises nothing. Where no broken or overcast layer is told, the ceiling counts as the height below which there is none.',
      },
      judge(f, moment, p, take) {
        if ((f.flight.reports ?? []).length === 0) return take('no-reports');
        const phases = phasesOf(f.flight, moment, p);
        const counted = countedReports(phases);
        const conditions = [...new Set(phases.flatMap(conditionsOfPhase))];
        if (f.flight.flightRules === 'IFR') return take('ifr', {}, { counted, conditions });
        const [ceiling, visibility] = [p.number(CEILING), p.number(VISIBILITY)];
        for (const one of phases) {
          const worst = leastOf(one);
          const values = { phase: PHASE_WORDS[one.phase], airfield: one.airfield, ceiling, visibility };
          if (worst.visibilitySm !== null && worst.visibilitySm < visibility)
            return take('low-visibility', { ...values, found: worst.visibilitySm }, { counted });
          if (worst.ceilingFtAgl !== null && worst.ceilingFtAgl < ceiling)
            return take('low-ceiling', { ...values, found: worst.ceilingFtAgl }, { counted });
        }
        if (phases.every(({ prevailing }) => prevailing.length === 0))
          throw new UnknownFact(
            'flight.reports',
            'no report or forecast at hand speaks of the time of the flight',
            `Check the weather before departure: nothing at hand speaks of ${placesOf(phases)} at the time of the flight.`,
          );
        return take('enough', { ceiling, visibility }, { counted, conditions });
      },
    },
  ],
});

const placesOf = (phases: readonly PhaseWeather[]): string =>
  [...new Set(phases.map(({ airfield }) => airfield))].join(', ');

/** The least that is told: one figure too low is too low, though another is missing. */
function leastOf({ prevailing }: PhaseWeather): ReturnType<typeof worstOf> {
  const known = (pick: 'ceilingFtAgl' | 'visibilitySm'): number | null =>
    worstOf(prevailing.filter((one) => one[pick] !== null))[pick];
  return { ceilingFtAgl: known('ceilingFtAgl'), visibilitySm: known('visibilitySm') };
}

/** What is to be looked at before departure. */
function conditionsOfPhase(one: PhaseWeather): string[] {
  const { phase, airfield, prevailing, passing, trend, oldForecast } = one;
  const where = `${PHASE_WORDS[phase]} at ${airfield}`;
  if (prevailing.length === 0)
    return [`Check the weather for ${where}: no report or forecast at hand speaks of it.`];
  const worst = worstOf(prevailing);
  const open = [
    ...(worst.visibilitySm === null ? ['visibility'] : []),
    ...(worst.ceilingFtAgl === null ? ['ceiling'] : []),
  ];
  return [
    ...(open.length === 0
      ? []
      : [`Find the ${open.join(' and ')} for ${where}: what is at hand does not say.`]),
    ...(oldForecast ? [`Look at the newest forecast for ${airfield} before departure.`] : []),
    ...passing.map(({ change, probabilityPercent, from, to, conditions }) => {
      const kind =
        change === 'probable' ? `weather of ${probabilityPercent} percent probability` : 'passing weather';
      const what = conditionWords(conditions) || 'it could not be read';
      return `Allow at ${airfield} from ${from} to ${to} for ${kind}: ${what}.`;
    }),
    ...(trend === null
      ? []
      : [`Look at what the report for ${airfield} adds about the next two hours: ${trend}.`]),
  ];
}
