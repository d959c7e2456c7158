import { vfrMinima, type VfrMinima } from '../../../air/vfr-minima.js';
import { defineRule } from '../../../engine/rule.js';
import { need } from '../../../engine/unknown.js';
import type { AirspaceClass } from '../../../facts/flight.js';
import { VFR_FIGURE_IDS, vfrFigures } from '../../../parameters/us/weather.js';
import { touchesNight } from '../../../sky/nights.js';
import { changeToIfr } from './change-to-ifr.js';
import { freshWeather } from './declared-weather.js';

/** Height assumed where the least that the law asks is wanted and none is declared. */
const LOWEST = 0;

/**
 * 14 CFR 91.155: basic VFR weather minima, against the weather declared for the departure field. The strictest minima of
 * the airspace named, up to the highest altitude planned, must be met; distance from cloud is a condition in flight.
 * Weather not declared, or observed too long before, is settled before departure.
 */
export const vfrWeather = defineRule({
  id: 'weather.vfr_minima',
  title: 'Basic VFR weather minima',
  weight: 'law',
  binds: 'flight',
  settledAt: 'departure',
  whenUnknown: 'Check that visibility and clouds allow VFR in the airspace of the flight.',
  reads: [],
  parameters: [...VFR_FIGURE_IDS, 'us.vfr-minima.surface-ceiling', 'us.weather.observation-hours'],
  branches: {
    ifr: { status: 'not-applicable', says: 'The flight is under IFR.' },
    enough: {
      status: 'met',
      says: 'Visibility {visibility} SM and ceiling {ceiling} ft meet the VFR minima of {needed} SM in the airspace of the flight.',
    },
    'low-visibility': {
      status: 'short',
      says: 'Visibility {visibility} SM is below the {needed} SM that VFR needs in the airspace of the flight.',
    },
    'low-ceiling': {
      status: 'short',
      says: 'A ceiling of {ceiling} ft is too low for VFR there, which needs {needed} ft.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: '14 CFR 91.155',
        status: 'seen',
        reading:
          'Class E named for a flight is taken to reach the surface (91.155(c)). Special VFR (91.157), the half-mile ' +
          'traffic pattern in class G by night (91.155(b)(2)) and the lower figures for helicopters are not used.',
      },
      judge(f, moment, p, take) {
        if (f.flight.flightRules === 'IFR') return take('ifr');
        const weather = need(
          freshWeather(f.flight.weather, moment, p.number('us.weather.observation-hours')),
          'flight.weather',
          'no recent weather is declared for the flight',
        );
        const visibility = need(weather.visibilitySm, 'flight.weather', 'the visibility is not declared');
        const ceiling = need(weather.ceilingFtAgl, 'flight.weather', 'the ceiling is not declared');
        const classes = (f.flight.airspace ?? []).filter((one) => one !== 'A');
        need(classes[0], 'flight.airspace', 'the airspace of the flight is not declared');
        const figures = vfrFigures((id) => p.number(id));
        const altitude = f.flight.maxAltitudeFtMsl;
        const strictest = (altitudeFtMsl: number | null, night: boolean): VfrMinima =>
          classes
            .map((airspace) => vfrMinima({ airspace, altitudeFtMsl, altitudeFtAgl: null, night }, figures)!)
            .reduce(stricter);
        const refuse = (needed: number) =>
          take('low-visibility', { visibility, needed }, { remedies: () => [changeToIfr] });

        const least = strictest(altitude ?? LOWEST, false);
        if (visibility < least.visibilitySm) return refuse(least.visibilitySm);
        const asked = strictest(altitude, false);
        if (visibility < asked.visibilitySm)
          need(altitude, 'flight.maxAltitudeFtMsl', 'how high the flight goes is not declared');
        // The night asks for more in class G alone, and no more there than controlled airspace asks for anyway.
        const surface = classes.some(isControlled);
        const night = !surface && touchesNight(moment, f.flight.route, 'civil');
        const minima = night ? strictest(altitude, true) : asked;
        if (visibility < minima.visibilitySm) return refuse(minima.visibilitySm);

        const floor = surface ? p.number('us.vfr-minima.surface-ceiling') : night ? figures.belowFt + 1 : 0;
        if (ceiling < floor)
          return take('low-ceiling', { ceiling, needed: floor }, { remedies: () => [changeToIfr] });
        const baseFtMsl = (f.flight.route[0]?.elevationFt ?? 0) + ceiling;
        const clearance = minima.belowFt ?? 0;
        const roomy = altitude !== null && altitude + clearance <= baseFtMsl;
        return take(
          'enough',
          { visibility, ceiling, needed: minima.visibilitySm },
          {
            conditions: roomy
              ? []
              : [keepFromCloud(minima, surface, baseFtMsl - clearance, figures.classGLowFtAgl)],
          },
        );
      },
    },
  ],
});

const isControlled = (airspace: AirspaceClass): boolean => airspace !== 'G';

/** Of two minima the one that asks more: visibility first, then any distance before none. */
function stricter(a: VfrMinima, b: VfrMinima): VfrMinima {
  if (a.visibilitySm !== b.visibilitySm) return a.visibilitySm > b.visibilitySm ? a : b;
  return a.clearOfClouds ? b : a;
}

function keepFromCloud(minima: VfrMinima, surface: boolean, topFtMsl: number, classGLowFt: number): string {
  if (minima.clearOfClouds) return 'Remain clear of clouds.';
  const across = minima.horizontalSm === null ? `${minima.horizontalFt} ft` : `${minima.horizontalSm} SM`;
  const distances = `${minima.belowFt} ft below, ${minima.aboveFt} ft above and ${across} from clouds`;
  return surface
    ? `Stay ${distances}: beneath the declared ceiling that is at or below ${Math.floor(topFtMsl)} ft above sea level.`
    : `Stay ${distances}; by day within ${classGLowFt} ft of the surface, remain clear of clouds.`;
}
