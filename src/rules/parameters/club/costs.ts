/**
 * What ways to yes cost, and how long they take: policy of the club, never law. They put ways in order and nothing else;
 * no answer hangs on them. The starting values are the invented club's paper; a club sets its own.
 */
import type { Parameter } from '../parameter.js';
import { clubParameter } from './club-parameter.js';

type Row = readonly [name: string, start: number, title: string];

const rows = (prefix: string, unit: Parameter['unit'], section: string, list: readonly Row[]): Parameter[] =>
  list.map(([name, start, title]): Parameter =>
    clubParameter({ id: `club.${prefix}.${name}`, title, unit, start, section }),
  );

const MONEY = rows('cost', 'money', '7.1', [
  ['aircraft-hour', 150, 'Aircraft, for an hour on the meter'],
  ['instructor-hour', 60, 'Instructor, for an hour in the air or on the ground'],
  ['medical-exam', 140, 'Medical examination'],
  ['physician', 90, 'Physician for BasicMed, and the course'],
  ['practical-test', 750, 'Examiner, for a practical test'],
  ['course', 130, 'Refresher course for instructors'],
  ['document', 30, 'Fees for a paper of an authority, or of the club'],
]);

/** Paid by the club, not by the member who asks. */
const WORKSHOP = rows('cost', 'money', '7.2', [
  ['annual', 1600, 'Workshop: annual inspection'],
  ['hundred-hour', 600, 'Workshop: 100-hour inspection'],
  ['test', 350, 'Workshop: test or inspection of an instrument, a transponder or an ELT'],
  ['items', 300, 'Workshop: directives, or items of the maintenance programme'],
  ['repair', 300, 'Workshop: repair of what was reported'],
  ['fitting', 2000, 'Workshop: equipment fitted'],
]);

const HOURS = rows('cost.hours', 'hours', '7.3', [
  ['sortie', 0.4, 'In the air, on any practice flight: from start-up to the task and back'],
  ['longest', 3, 'In the air: the longest practice flight on which several things are done together'],
  ['landing', 0.2, 'In the air: one take-off and landing'],
  ['review', 1, 'In the air: flight review'],
  ['review-ground', 1, 'On the ground: flight review'],
  ['check', 1.2, 'In the air: checkout in a model, or the club check'],
  ['differences', 0.6, 'In the air: being shown changed equipment'],
  ['instrument', 2, 'In the air: instrument tasks, or an instrument proficiency check'],
  ['training', 3, 'In the air: training for an endorsement'],
  ['test', 1.5, 'In the air: practical test'],
  ['test-ground', 2.5, 'On the ground: practical test'],
  ['appointment', 2, 'On the ground: seeing an examiner or a physician'],
  ['course', 16, 'On the ground: refresher course for instructors'],
  ['office', 0.5, 'On the ground: a paper, a payment, a call, a check of the aircraft'],
]);

const POINTS = rows('cost.points', 'points', '7.4', [
  ['passenger-left', 80, 'Inconvenience of leaving one passenger at home'],
  ['hour-moved', 15, 'Inconvenience of leaving, or being back, an hour from the time asked for'],
  ['other-aircraft', 25, 'Inconvenience of taking another aircraft'],
  ['instructor', 40, 'Inconvenience of taking an instructor along'],
  ['instructor-to-find', 15, 'Inconvenience of having to find that instructor'],
  ['plan-changed', 20, 'Inconvenience of any other change of what was asked for'],
  ['others-asked', 70, 'Inconvenience of asking somebody to give something up, or giving it up'],
  ['officer', 50, 'Inconvenience of asking an officer to set one club rule aside'],
]);

const VALUES = rows('cost', 'money', '7.5', [
  ['value-of-hour', 25, "What an hour of a member's time counts for"],
  ['value-of-day', 5, 'What a day of waiting counts for'],
  ['value-of-point', 1, 'What a point of inconvenience counts for'],
]);

const LEADS = rows('lead', 'days', '7.6', [
  ['alone', 1, 'Days until an aircraft can be had for practice'],
  ['instructor', 3, 'Days until an instructor can be had'],
  ['examiner', 21, 'Days until an examiner can be had'],
  ['medical', 7, 'Days until a medical examiner or a physician can be seen'],
  ['course', 7, 'Days until a course is completed'],
  ['inspection', 7, 'Days until an inspection is done and signed'],
  ['repair', 3, 'Days until something small is repaired, tested or done'],
  ['fitting', 21, 'Days until equipment is fitted'],
  ['document', 10, 'Days until an authority sends a paper'],
  ['office', 1, "Days until the club's office or an officer has seen to something"],
  ['others', 1, 'Days until another member has answered'],
]);

/** All of them, and the word for the money. */
export const CLUB_COSTS: readonly Parameter[] = [
  clubParameter({
    id: 'club.cost.currency',
    title: 'What money is counted in',
    unit: 'choice',
    start: 'dollars',
    section: '7.1',
  }),
  ...MONEY,
  ...WORKSHOP,
  ...HOURS,
  ...POINTS,
  ...VALUES,
  ...LEADS,
];
