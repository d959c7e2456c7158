import { FigureInput } from '../parts/fields.js';

/** Intervals as they are typed; whichever comes first counts. */
export interface Intervals {
  intervalH: string;
  calendarMonths: string;
  days: string;
}

/** Every so many hours, months, days. */
export function IntervalFields({ of, set }: { of: Intervals; set: (change: Partial<Intervals>) => void }) {
  return (
    <>
      <FigureInput
        label="Every so many hours"
        value={of.intervalH}
        set={(intervalH) => set({ intervalH })}
        step="0.1"
      />
      <FigureInput
        label="Every so many calendar months"
        value={of.calendarMonths}
        set={(calendarMonths) => set({ calendarMonths })}
        step="1"
      />
      <FigureInput label="Every so many days" value={of.days} set={(days) => set({ days })} step="1" />
    </>
  );
}
