/** Minimums between the API, in hours, and the record, in tenths. */
import { hoursOf, show, tenthsOf } from '../../platform/http/views.js';
import type { PilotMinimums } from '../../rules/facts/insurance.js';
import { type PilotMinimumsDto, PilotMinimumsView } from './insurance.dto.js';

/** No hours are no minimum. */
const least = (hours: number | null | undefined): number | null => tenthsOf(hours) || null;

export const minimumsOf = (body: PilotMinimumsDto): PilotMinimums => ({
  leastLevel: body.leastLevel ?? null,
  instrumentRating: body.instrumentRating ?? false,
  leastAgeYears: body.leastAgeYears ?? null,
  mostAgeYears: body.mostAgeYears ?? null,
  totalTenths: least(body.totalH),
  classTenths: least(body.classH),
  retractableTenths: least(body.retractableH),
  tailwheelTenths: least(body.tailwheelH),
  modelTenths: least(body.modelH),
  recentTenths: least(body.recentH),
  recentDays: least(body.recentH) === null ? null : (body.recentDays ?? null),
  checkoutInModel: body.checkoutInModel ?? false,
  dualInModelTenths: least(body.dualInModelH),
  reviewMonths: body.reviewMonths ?? null,
});

export const minimumsView = (of: PilotMinimums): PilotMinimumsView =>
  show(PilotMinimumsView, of, {
    totalH: hoursOf(of.totalTenths),
    classH: hoursOf(of.classTenths),
    retractableH: hoursOf(of.retractableTenths),
    tailwheelH: hoursOf(of.tailwheelTenths),
    modelH: hoursOf(of.modelTenths),
    recentH: hoursOf(of.recentTenths),
    dualInModelH: hoursOf(of.dualInModelTenths),
  });
