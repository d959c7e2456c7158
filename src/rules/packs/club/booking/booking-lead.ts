import { addDays } from '../../../calendar/dates.js';
import { defineRule } from '../../../engine/rule.js';
import { departLater } from './other-times.js';

/**
 * Club rule: how long before departure a booking is made, counted from when the facts were gathered. It is about making a
 * booking: one that stands is not asked again.
 */
export const bookingLead = defineRule({
  id: 'club.booking_lead',
  title: 'How far ahead',
  weight: 'club',
  binds: 'flight',
  onlyWhenBooking: true,
  reads: [],
  parameters: ['club.booking-lead.min-hours', 'club.booking-lead.max-days'],
  branches: {
    maintenance: { status: 'not-applicable', says: 'Flights for maintenance may be booked at any time.' },
    planned: { status: 'not-applicable', says: 'Asked ahead: this is asked when the flight is booked.' },
    'in-time': {
      status: 'met',
      says: 'Booked neither too late nor too far ahead; departures through {through} may be booked.',
    },
    'too-late': { status: 'short', says: 'The club asks for a booking {hours} h before departure.' },
    'too-early': {
      status: 'short',
      says: 'The club takes bookings {days} days ahead, now through {through}; book it nearer the day.',
    },
  },
  bodies: [
    {
      version: 1,
      from: null,
      to: null,
      citation: {
        text: 'Club handbook, section 4.2',
        status: 'club paper',
        reading:
          'Days ahead are counted on the calendar from the day of booking; the last of them may be booked whole.',
      },
      judge(f, moment, p, take) {
        const { purpose, planned = false } = f.flight;
        if (planned) return take('planned');
        if (purpose === 'maintenance' || purpose === 'ferry-to-inspection') return take('maintenance');
        const hours = p.number('club.booking-lead.min-hours');
        const days = p.number('club.booking-lead.max-days');
        const earliest = moment.hoursFromKnowledge(hours);
        if (hours > 0 && !moment.departsAtOrAfter(earliest))
          return take('too-late', { hours }, { remedies: () => [departLater(moment, earliest, hours)] });
        const through = addDays(moment.knowledgeDate(), days);
        if (moment.startsOnOrAfter(addDays(through, 1))) return take('too-early', { days, through });
        return take('in-time', { through });
      },
    },
  ],
});
