import { TextsField } from '../../platform/http/fields.js';

/** Weather reports and forecasts pasted word for word. */
export class ReportsDto {
  @TextsField({
    ...{ optional: true, max: 2000, description: 'Reports (METAR, SPECI) of airfields of the route' },
    example: ['METAR XQHB 011753Z 09008KT 10SM FEW045 12/02 A3001'],
  })
  metar?: string[];

  @TextsField({ optional: true, max: 2000, description: 'Forecasts (TAF) of airfields of the route' })
  taf?: string[];
}
