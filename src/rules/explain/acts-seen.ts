import type { Actor } from '../engine/remedy.js';

/** An act that can cure a finding of a rule, with the sentence of one case as an example. */
export interface ActSeen {
  act: string;
  by: Actor;
  example: string;
}

/** Written from the rules' case tables by `npm run acts:write`: rule | act | who | example. */
const TABLE = `
ad.recurring | comply-with-directives | mechanic | Have the directives complied with and signed.
ad.recurring | obtain-special-flight-permit | maintenance-coordinator | Obtain a special flight permit for the ferry flight, with required crew only.
ad.recurring | fly-with-essential-crew | member | Take nobody but the required crew.
advice.papers_unverified | have-papers-verified | officer | Show the papers to a safety officer, who verifies them.
aircraft.in_service | return-to-service | maintenance-coordinator | Put the aircraft back into service.
aircraft.kinds_of_operation | land-before-night | member | Leave at 2027-03-01 17:15 and be on the ground at XQHB by 2027-03-01 18:15, outside the night.
aircraft.kinds_of_operation | depart-after-night | member | Leave at 2027-03-02 06:10 and be on the ground at XQHB by 2027-03-02 07:10, outside the night.
aircraft.kinds_of_operation | change-to-vfr | member | Fly under visual flight rules.
airspace.class_a | stay-below-class-a | member | Plan the flight below 18000 ft and outside class A airspace.
airspace.class_a | change-to-ifr | member | Fly it under IFR, with a clearance.
calendar.aircraft_free | ask-for-the-aircraft | member | Ask Sam Second to move or give up the booking.
calendar.instructor_free | name-another-instructor | member | Ask for another instructor.
calendar.instructor_hours | depart-later | member | Leave at 2027-03-02 09:00, when the instructor teaches.
calendar.instructor_hours | name-another-instructor | member | Ask for another instructor.
calendar.member_free | give-up-commitment | member | Give up another booking.
certificate.canada.hire | fly-without-hire | member | Carry nobody and nothing for payment.
certificate.canada.licence | add-class-rating | examiner | Train for the rating (airplane, single engine sea) and pass its flight test.
certificate.canada.licence | renew-certificate | member | Renew the document booklet and show it to the club.
certificate.canada.permit_limits | take-fewer-passengers | member | Leave one person behind.
certificate.canada.permit_limits | land-before-night | member | Leave at 2027-03-01 17:15 and be on the ground at XQHB by 2027-03-01 18:15, outside the night.
certificate.canada.permit_limits | depart-after-night | member | Leave at 2027-03-02 06:10 and be on the ground at XQHB by 2027-03-02 07:10, outside the night.
certificate.canada.permit_limits | keep-within-permit-limits | member | Carry nobody and nothing for payment. Fly under visual flight rules.
certificate.canada.permit_limits | leave-passengers | member | Fly without passengers.
certificate.category_class | add-class-rating | examiner | Pass the practical test for the rating (airplane, multi engine land).
certificate.category_class | leave-passengers | member | Fly without passengers.
certificate.category_class | renew-certificate | member | Renew the private pilot certificate and show it to the club.
certificate.easa.hire | fly-without-hire | member | Carry nobody and nothing for payment.
certificate.easa.lapl_limits | leave-passengers | member | Fly without passengers.
certificate.easa.lapl_limits | keep-within-lapl-limits | member | Carry nobody and nothing for payment. Fly under visual flight rules. Leave one person behind.
certificate.easa.lapl_limits | take-fewer-passengers | member | Leave one person behind.
certificate.easa.licence | renew-certificate | member | Have the licence renewed and show it to the club.
certificate.easa.licence | leave-passengers | member | Fly without passengers.
certificate.instrument_rating | change-to-vfr | member | Fly under visual flight rules.
certificate.instrument_rating | add-instrument-rating | examiner | Pass the practical test for the instrument rating.
certificate.privileges | fly-without-hire | member | Carry nobody and nothing for payment.
certificate.privileges | land-before-night | member | Leave at 2027-03-01 17:15 and be on the ground at XQHB by 2027-03-01 18:15, outside the night.
certificate.privileges | depart-after-night | member | Leave at 2027-03-02 06:10 and be on the ground at XQHB by 2027-03-02 07:10, outside the night.
certificate.privileges | add-instrument-rating | examiner | Pass the practical test for the instrument rating.
certificate.type_rating | add-type-rating | examiner | Pass the practical test for the type rating KESTREL-J.
check.vor_30_days | check-vor | member | Check the VOR receiver and enter date, place, bearing error and signature.
check.vor_30_days | fly-without-vor | member | Navigate without VOR.
check.vor_30_days | change-to-vfr | member | Fly under visual flight rules.
club.annual_check | fly-club-check | instructor | Fly the club check with an instructor, who signs it off.
club.booking_lead | depart-later | member | Depart 2 h from now, or later.
club.booking_length | shorten-booking | member | Book it for no longer than 10 h.
club.charges_paid | settle-account | member | Settle the account.
club.citizenship_evidence | show-papers-to-officer | officer | Show an officer the papers, who records it: citizenship or eligibility for flight training.
club.crosswind_checkout | fly-condition-checkout | instructor | Fly a crosswind checkout with an instructor, who signs it off.
club.crosswind_checkout | choose-runway | member | Use runway 36 at XQHB.
club.differences_checkout | fly-differences | instructor | Have an instructor show you the glass panel and sign it off.
club.equipment_checkout | fly-equipment-checkout | instructor | Have an instructor show you the autopilot in flight and sign it off.
club.fair_use.hours_ahead | shorten-booking | member | Book it for no longer than 59 minutes.
club.fair_use.hours_ahead | give-up-commitment | member | Give up another booking on 2027-03-05 11:00.
club.fair_use.open_bookings | give-up-commitment | member | Give up another booking on 2027-03-06 11:00.
club.fair_use.weekend_bookings | give-up-commitment | member | Give up another booking on 2027-03-06 11:00.
club.hours_promised | shorten-flight | member | Keep the flight to 0.5 h on the meter.
club.identity_checks | show-papers-to-officer | officer | Show an officer the papers, who records it: identity document.
club.insurance_minimums | fly-missing-with-instructor | instructor | Fly 0.1 h in the Harrow Lark 160 with an instructor.
club.insurance_minimums | fly-checkout | instructor | Fly the Harrow Lark 160 with an instructor, who signs the checkout.
club.insurance_minimums | fly-club-check | instructor | Fly the Harrow Lark 160 with an instructor, who signs the club check.
club.membership | renew-membership | administrator | Have the membership renewed.
club.model_checkout | fly-checkout | instructor | Fly a checkout in the Harrow Lark 160 with an instructor, who signs it off.
club.model_recency | fly-landings-model | instructor | Fly 3 landings in the Harrow Lark 160 with an instructor.
club.model_recency | fly-with-instructor | instructor | Take an instructor along on this flight.
club.mountain_checkout | fly-condition-checkout | instructor | Fly a mountain checkout with an instructor, who signs it off.
club.mountain_checkout | stay-local | member | Stay around XQHB and land nowhere else.
club.night_checkout | land-before-night | member | Leave at 2027-03-01 17:15 and be on the ground at XQHB by 2027-03-01 18:15, outside the night.
club.night_checkout | depart-after-night | member | Leave at 2027-03-02 06:10 and be on the ground at XQHB by 2027-03-02 07:10, outside the night.
club.night_checkout | fly-night-checkout | instructor | Fly a night checkout with an instructor, who signs it off.
club.pilot_standing | lift-suspension-of-pilot | officer | Ask an officer to lift the suspension of the pilot in command.
club.runway_length | reduce-load | member | Leave behind 0.1 US gal of fuel.
club.runway_length | choose-runway | member | Use runway 18 at XQHB.
club.runway_margin | reduce-load | member | Leave behind 0.1 US gal of fuel.
club.runway_margin | choose-runway | member | Use runway 18 at XQHB.
club.short_field_checkout | fly-condition-checkout | instructor | Fly a short-field checkout with an instructor, who signs it off.
club.short_field_checkout | stay-local | member | Stay around XQHB and land nowhere else.
club.short_field_checkout | choose-runway | member | Use runway 09 at XQSF.
club.standing | settle-account | member | Settle the account.
club.standing | lift-suspension | officer | Ask an officer to lift the suspension.
club.student_limits.ceiling_visibility | fly-with-instructor | instructor | Take an instructor along on this flight.
club.student_limits.night | land-before-night | member | Leave at 2027-03-01 17:15 and be on the ground at XQHB by 2027-03-01 18:15, outside the night.
club.student_limits.night | depart-after-night | member | Leave at 2027-03-02 06:10 and be on the ground at XQHB by 2027-03-02 07:10, outside the night.
club.student_limits.night | fly-with-instructor | instructor | Take an instructor along on this flight.
club.student_limits.runway | fly-with-instructor | instructor | Take an instructor along on this flight.
club.student_limits.runway | choose-runway | member | Use runway 09 at XQHB.
club.student_limits.runway | stay-local | member | Stay around XQHB and land nowhere else.
club.student_limits.wind | fly-with-instructor | instructor | Take an instructor along on this flight.
club.student_limits.wind | choose-runway | member | Use runway 09 at XQHB.
elt.battery | replace-elt-battery | mechanic | Have the ELT battery replaced.
endorsement.additional_training.complex | get-endorsement-complex | instructor | Train with an instructor in a complex airplane and be endorsed.
endorsement.additional_training.high_altitude | get-endorsement-high-altitude | instructor | Train with an instructor in a pressurised high-altitude aircraft and be endorsed.
endorsement.additional_training.high_performance | get-endorsement-high-performance | instructor | Train with an instructor in a high-performance airplane and be endorsed.
endorsement.additional_training.tailwheel | get-endorsement-tailwheel | instructor | Train with an instructor in a tailwheel airplane and be endorsed.
equipment.day_vfr | install-equipment | mechanic | Have fitted and working: an airspeed indicator, an altimeter, a magnetic direction indicator, a tachometer for each engine, an oil pressure gauge for each engine, an oil or coolant temperature gauge for each engine, a fuel gauge for each tank, a safety belt for each occupant, shoulder harnesses for the front seats, an emergency locator transmitter.
equipment.day_vfr | fix-squawk | mechanic | Have repaired: a fuel gauge for each tank.
equipment.day_vfr | fly-with-essential-crew | member | Take nobody but the required crew.
equipment.ifr | fix-squawk | mechanic | Have repaired: an attitude indicator.
equipment.ifr | change-to-vfr | member | Fly under visual flight rules.
equipment.ifr | install-equipment | mechanic | Have fitted and working: DME or RNAV.
equipment.inoperative | land-before-night | member | Leave at 2027-03-01 17:15 and be on the ground at XQHB by 2027-03-01 18:15, outside the night.
equipment.inoperative | depart-after-night | member | Leave at 2027-03-02 06:10 and be on the ground at XQHB by 2027-03-02 07:10, outside the night.
equipment.inoperative | fix-squawk | mechanic | Have repaired: "out".
equipment.inoperative | land-before-sunset | member | Leave at 2027-03-01 16:50 and be on the ground at XQHB by 2027-03-01 17:50, outside the night.
equipment.inoperative | depart-after-sunrise | member | Leave at 2027-03-02 06:35 and be on the ground at XQHB by 2027-03-02 07:35, outside the night.
equipment.inoperative | change-to-vfr | member | Fly under visual flight rules.
equipment.inoperative | avoid-transponder-airspace | member | Stay out of class A, B and C and below 10,000 ft.
equipment.inoperative | defer-squawk | mechanic | Deactivate or remove, placard and enter: "out".
equipment.inoperative | fly-with-essential-crew | member | Take nobody but the required crew.
equipment.night_vfr | fix-squawk | mechanic | Have repaired: a landing light, as the flight is for hire.
equipment.night_vfr | land-before-night | member | Leave at 2027-03-01 17:15 and be on the ground at XQHB by 2027-03-01 18:15, outside the night.
equipment.night_vfr | depart-after-night | member | Leave at 2027-03-02 06:10 and be on the ground at XQHB by 2027-03-02 07:10, outside the night.
equipment.night_vfr | land-before-sunset | member | Leave at 2027-03-01 16:50 and be on the ground at XQHB by 2027-03-01 17:50, outside the night.
equipment.night_vfr | depart-after-sunrise | member | Leave at 2027-03-02 06:35 and be on the ground at XQHB by 2027-03-02 07:35, outside the night.
equipment.night_vfr | install-equipment | mechanic | Have fitted and working: spare fuses.
equipment.transponder | install-equipment | mechanic | Have fitted and working: ADS-B Out.
equipment.transponder | avoid-transponder-airspace | member | Stay out of class A, B and C and below 10,000 ft.
equipment.transponder | use-transponder | member | Use the transponder.
equipment.transponder | fix-squawk | mechanic | Have repaired: a transponder that reports altitude.
fuel.reserve | take-more-fuel | member | Take at least 20 US gallons of fuel.
fuel.reserve | shorten-flight | member | Plan a flight of no more than 1.4 hours.
inspection.altimeter_static | sign-altimeter-static | mechanic | Have the altimeter and static system tested and signed.
inspection.altimeter_static | change-to-vfr | member | Fly under visual flight rules.
inspection.annual | sign-annual | mechanic | Have the annual inspection done and signed.
inspection.annual | fly-with-essential-crew | member | Take nobody but the required crew.
inspection.annual | obtain-special-flight-permit | maintenance-coordinator | Obtain a special flight permit for the ferry flight, with required crew only.
inspection.elt | sign-elt-inspection | mechanic | Have the ELT inspected and signed.
inspection.hours_100 | sign-100-hour | mechanic | Have the 100-hour inspection done and signed.
inspection.hours_100 | shorten-flight | member | Keep the flight to 2.0 h on the meter.
inspection.hours_100 | fly-without-instruction | member | Fly without instruction.
inspection.hours_100 | obtain-special-flight-permit | maintenance-coordinator | Obtain a special flight permit for the ferry flight, with required crew only.
inspection.hours_100 | fly-with-essential-crew | member | Take nobody but the required crew.
inspection.progressive | sign-progressive | mechanic | Have the due inspections of the progressive programme done and signed.
inspection.progressive | obtain-special-flight-permit | maintenance-coordinator | Obtain a special flight permit for the ferry flight, with required crew only.
inspection.progressive | fly-with-essential-crew | member | Take nobody but the required crew.
inspection.transponder | sign-transponder | mechanic | Have the transponder tested and signed.
inspection.transponder | fly-without-transponder | member | Leave the transponder off, where the airspace allows it.
instructor.authority | change-to-vfr | member | Fly under visual flight rules.
instructor.canada.rating | renew-instructor-certificate | examiner | The instructor has the instructor certificate renewed before teaching.
instructor.easa.certificate | renew-instructor-certificate | examiner | The instructor has the instructor certificate renewed before teaching.
instructor.recent_experience | complete-instructor-refresher | instructor | The instructor completes an approved refresher course before teaching.
instructor.recent_experience | pass-instructor-practical-test | examiner | The instructor passes an instructor practical test.
item.advice | do-advice-items | mechanic | Have the advised items done and signed.
item.club | do-club-items | mechanic | Have the club's own items done and signed.
language.easa.proficiency | pass-language-assessment | examiner | Pass a language proficiency assessment and have it endorsed.
load.balance | reduce-load | member | Leave behind 1.3 US gal of fuel.
load.balance | move-load | member | Move 1 lb of baggage from Shelf to Locker.
load.balance | take-fewer-passengers | member | Take no passengers in rear seats.
load.persons | take-fewer-persons | member | Take 4 on board at most.
load.persons | fly-alone | member | Fly alone.
load.persons | declare-passengers | member | Ask for the flight as one with passengers.
load.persons | correct-persons-on-board | member | Correct the request: 2 on board.
load.weight | reduce-load | member | Leave behind 1 lb of baggage.
medical.basicmed | pass-medical-exam | medical-examiner | Pass a medical examination for class 3.
medical.basicmed | take-fewer-passengers | member | Leave one person behind.
medical.basicmed | renew-basicmed | member | For BasicMed: see a physician again.
medical.basicmed | stay-low | member | Plan the flight at or below 18,000 ft above mean sea level.
medical.basicmed | stay-slow | member | Plan the flight at 250 knots indicated or less.
medical.basicmed | fly-without-hire | member | Carry nobody and nothing for payment.
medical.basicmed | keep-within-basicmed-limits | member | Plan the flight at or below 18,000 ft above mean sea level. Plan the flight at 250 knots indicated or less.
medical.canada.certificate | pass-medical-exam | medical-examiner | Obtain a medical certificate of category 3.
medical.certificate | pass-medical-exam | medical-examiner | Pass a medical examination for class 3.
medical.certificate | complete-basicmed | member | With a valid driver’s licence and no application denied: see a physician for the BasicMed examination and complete the course.
medical.easa.certificate | pass-medical-exam | medical-examiner | Pass a medical examination (class 2).
permit.special_flight | fly-with-essential-crew | member | Take nobody but the required crew.
permit.special_flight | obtain-special-flight-permit | maintenance-coordinator | Obtain a special flight permit for the ferry flight, with required crew only.
personal.ceiling_visibility | fly-with-instructor | instructor | Take an instructor along on this flight.
personal.night | land-before-night | member | Leave at 2027-03-01 17:15 and be on the ground at XQHB by 2027-03-01 18:15, outside the night.
personal.night | depart-after-night | member | Leave at 2027-03-02 06:10 and be on the ground at XQHB by 2027-03-02 07:10, outside the night.
personal.night | fly-with-instructor | instructor | Take an instructor along on this flight.
personal.runway | fly-with-instructor | instructor | Take an instructor along on this flight.
personal.runway | choose-runway | member | Use runway 09 at XQHB.
personal.runway | stay-local | member | Stay around XQHB and land nowhere else.
personal.wind | fly-with-instructor | instructor | Take an instructor along on this flight.
personal.wind | choose-runway | member | Use runway 09 at XQHB.
rating.canada.instrument | change-to-vfr | member | Fly under visual flight rules.
rating.canada.night | land-before-night | member | Leave at 2027-03-01 17:15 and be on the ground at XQHB by 2027-03-01 18:15, outside the night.
rating.canada.night | depart-after-night | member | Leave at 2027-03-02 06:10 and be on the ground at XQHB by 2027-03-02 07:10, outside the night.
rating.canada.night | get-night-rating | instructor | Complete the night training and have the night rating endorsed.
rating.easa.class | renew-class-rating | examiner | Have the rating single engine piston land renewed: training as needed and a proficiency check.
rating.easa.class | pass-class-rating-test | examiner | Train for the rating single engine piston land and pass its skill test.
rating.easa.differences | train-differences | instructor | Train the differences with an instructor and have them signed: variable pitch propeller.
rating.easa.instrument | change-to-vfr | member | Fly under visual flight rules.
rating.easa.instrument | pass-instrument-proficiency-check | examiner | Have the instrument rating renewed: training as needed and a proficiency check.
rating.easa.night | land-before-night | member | Leave at 2027-03-01 17:15 and be on the ground at XQHB by 2027-03-01 18:15, outside the night.
rating.easa.night | depart-after-night | member | Leave at 2027-03-02 06:10 and be on the ground at XQHB by 2027-03-02 07:10, outside the night.
rating.easa.night | get-night-rating | instructor | Complete the night training and have the night rating endorsed.
rating.easa.revalidation | fly-to-revalidate | member | For the rating, fly 6.0 h of flight time, 6.0 h of it in command, 11 take-offs, 11 landings more.
rating.easa.revalidation | pass-proficiency-check | examiner | Pass a proficiency check with an examiner.
recency.canada.five_years | regain-privileges | instructor | To regain the privileges, fly a flight review and pass the examination.
recency.canada.instrument | fly-instrument-tasks | member | Fly 1 instrument approaches, in simulated conditions with a safety pilot or in a device.
recency.canada.instrument | pass-instrument-proficiency-check | examiner | Pass an instrument proficiency check.
recency.canada.instrument | change-to-vfr | member | Fly under visual flight rules.
recency.canada.passengers | fly-landings-day | member | Fly 5 take-offs and landings without passengers.
recency.canada.passengers | leave-passengers | member | Fly without passengers.
recency.canada.passengers | fly-landings-night | member | Fly 5 take-offs and landings by night without passengers.
recency.canada.recurrent_24_months | complete-self-paced-study | member | Complete the self-paced study programme of the year and keep it.
recency.canada.recurrent_24_months | fly-flight-review | instructor | Fly a flight review with an instructor.
recency.easa.lapl | fly-missing-with-instructor | instructor | Fly 11.0 h with an instructor, with 11 take-offs and 11 landings.
recency.easa.lapl | pass-proficiency-check | examiner | Pass a proficiency check with an examiner.
recency.easa.passengers | fly-landings-day | member | Fly 3 take-offs and landings without passengers.
recency.easa.passengers | leave-passengers | member | Fly without passengers.
recency.easa.passengers | fly-landings-night | member | Fly 1 take-offs and landings by night without passengers.
recency.instrument | fly-instrument-tasks | member | Fly 6 approaches, holding, and intercepting and tracking, under a view-limiting device with a safety pilot, or in a training device.
recency.instrument | pass-instrument-proficiency-check | instructor | Pass an instrument proficiency check with an instrument instructor.
recency.instrument | change-to-vfr | member | Fly under visual flight rules.
recency.instrument.grace | fly-instrument-tasks | member | Fly 6 approaches, holding, and intercepting and tracking, under a view-limiting device with a safety pilot, or in a training device.
recency.instrument.grace | pass-instrument-proficiency-check | instructor | Pass an instrument proficiency check with an instrument instructor.
recency.instrument.grace | change-to-vfr | member | Fly under visual flight rules.
recency.instrument.ipc | pass-instrument-proficiency-check | instructor | Pass an instrument proficiency check with an instrument instructor.
recency.instrument.ipc | change-to-vfr | member | Fly under visual flight rules.
recency.passengers.day | fly-landings-day | member | Fly 3 take-offs and 3 landings without passengers.
recency.passengers.day | leave-passengers | member | Fly without passengers.
recency.passengers.night | fly-landings-night | member | Fly 3 take-offs and 3 landings between one hour after sunset and one hour before sunrise, each to a full stop, without passengers.
recency.passengers.night | land-before-night | member | Leave at 2027-03-01 17:50 and be on the ground at XQHB by 2027-03-01 18:50, outside the night.
recency.passengers.night | depart-after-night | member | Leave at 2027-03-02 05:35 and be on the ground at XQHB by 2027-03-02 06:35, outside the night.
recency.passengers.night | leave-passengers | member | Fly without passengers.
recreational.limits | land-before-sunset | member | Leave at 2027-03-01 17:05 and be on the ground at XQHB by 2027-03-01 17:50, outside the night.
recreational.limits | depart-after-sunrise | member | Leave at 2027-03-02 06:35 and be on the ground at XQHB by 2027-03-02 07:20, outside the night.
recreational.limits | take-fewer-passengers | member | Leave one person behind.
recreational.limits | stay-local | member | Stay around XQHB and land nowhere else.
recreational.limits | get-endorsement-recreational-cross-country | instructor | Train cross-country with an instructor and be endorsed.
recreational.limits | get-endorsement-recreational-50nm | instructor | Train with an instructor around XQHB and be endorsed for flights within 50 NM of it.
recreational.limits | stay-low | member | Plan the flight at or below 10,000 ft above mean sea level.
recreational.limits | keep-out-of-airspace | member | Plan the flight clear of class D airspace.
recreational.limits | get-endorsement-recreational-airspace | instructor | Train with an instructor in controlled airspace and be endorsed.
recreational.limits | fly-without-hire | member | Carry nobody and nothing for payment.
recreational.limits | get-endorsement-recreational-refresher | instructor | Fly with an instructor and be endorsed as proficient again.
recreational.limits | keep-within-recreational-limits | member | Leave one person behind. Carry nobody and nothing for payment.
recreational.limits | change-to-vfr | member | Fly under visual flight rules.
registration.validity | renew-registration | administrator | Renew the registration of the aircraft.
review.flight_24_months | fly-flight-review | instructor | Fly a flight review with an instructor.
review.flight_24_months | get-endorsement-solo | instructor | Train with an instructor and be endorsed for solo flight in the Harrow Lark 160.
sport.limits | take-fewer-passengers | member | Leave one person behind.
sport.limits | land-before-night | member | Leave at 2026-12-01 16:00 and be on the ground at XQHB by 2026-12-01 17:00, outside the night.
sport.limits | depart-after-night | member | Leave at 2026-12-02 06:35 and be on the ground at XQHB by 2026-12-02 07:35, outside the night.
sport.limits | pass-medical-exam | medical-examiner | Pass a medical examination for class 3.
sport.limits | get-endorsement-sport-night | instructor | Train at night with an instructor and be endorsed.
sport.limits | get-endorsement-sport-retractable-gear | instructor | Train with an instructor on retractable landing gear and be endorsed.
sport.limits | keep-within-sport-limits | medical-examiner | Fly under visual flight rules. Pass a medical examination for class 3.
sport.limits | get-endorsement-sport-controllable-propeller | instructor | Train with an instructor on a controllable-pitch propeller and be endorsed.
sport.limits | keep-out-of-airspace | member | Plan the flight clear of class D airspace.
sport.limits | get-endorsement-sport-airspace | instructor | Train with an instructor in controlled airspace and be endorsed.
squawk.grounding | fix-squawk | mechanic | Have repaired: "brake line leaks".
squawk.grounding | obtain-special-flight-permit | maintenance-coordinator | Obtain a special flight permit for the ferry flight, with required crew only.
squawk.grounding | fly-with-essential-crew | member | Take nobody but the required crew.
student.solo | get-endorsement-solo | instructor | Train with an instructor and be endorsed for solo flight in the Harrow Lark 160.
student.solo | leave-passengers | member | Fly without passengers.
student.solo | land-before-night | member | Leave at 2027-03-01 17:15 and be on the ground at XQHB by 2027-03-01 18:15, outside the night.
student.solo | depart-after-night | member | Leave at 2027-03-02 06:10 and be on the ground at XQHB by 2027-03-02 07:10, outside the night.
student.solo | get-endorsement-solo-night | instructor | Train at night with an instructor and be endorsed for solo flight at night in the Harrow Lark 160.
student.solo | change-to-vfr | member | Fly under visual flight rules.
student.solo | keep-within-student-limits | instructor | Carry nobody and nothing for payment. Train with an instructor and be endorsed for solo flight in the Harrow Lark 160.
student.solo.cross_country | get-endorsement-solo-cross-country | instructor | Train cross-country with an instructor, be endorsed, and have the planning of this flight reviewed and endorsed.
student.solo.cross_country | get-endorsement-solo-other-airport-25nm | instructor | Fly to XQNR with an instructor and be endorsed for solo flights there.
student.solo.cross_country | stay-local | member | Stay around XQHB and land nowhere else.
student.solo.cross_country | get-endorsement-solo-cross-country-flight | instructor | Have an instructor review and endorse the planning of this flight.
weather.vfr_minima | change-to-ifr | member | Fly it under IFR, with a clearance.
work.check_flight | fly-with-essential-crew | member | Take nobody but the required crew.
work.check_flight | fly-check-flight | member | Have the check flight made and logged after “Annual inspection”.
work.return_to_service | sign-work | mechanic | Have finished and signed: “Annual inspection”.
`;

/** By rule id, in the order of the case tables. */
export const ACTS_SEEN: Readonly<Record<string, readonly ActSeen[]>> = read(TABLE);

function read(table: string): Record<string, ActSeen[]> {
  const byRule: Record<string, ActSeen[]> = {};
  for (const line of table.split('\n').filter(Boolean)) {
    const [rule, act, by, example] = line.split(' | ') as [string, string, Actor, string];
    (byRule[rule] ??= []).push({ act, by, example });
  }
  return byRule;
}
