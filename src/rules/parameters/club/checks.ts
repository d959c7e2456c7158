import { clubParameter } from './club-parameter.js';

/** What the club asks of a pilot before handing over an aircraft. */
export const CLUB_CHECKS = [
  clubParameter({
    id: 'club.model-checkout.required',
    title: 'A checkout in the model is needed to fly it as pilot in command',
    unit: 'flag',
    start: true,
    section: '3.1',
  }),
  clubParameter({
    id: 'club.model-checkout.instructors-too',
    title: 'An instructor giving instruction needs the model checkout too',
    unit: 'flag',
    start: true,
    section: '3.1',
  }),
  clubParameter({
    id: 'club.model-recency.days',
    title: 'Days in which landings in the model count',
    unit: 'days',
    start: 60,
    section: '3.2',
  }),
  clubParameter({
    id: 'club.model-recency.landings',
    title: 'Landings in the model needed to take it without an instructor; 0 asks for none',
    unit: 'count',
    start: 3,
    section: '3.2',
  }),
  clubParameter({
    id: 'club.annual-check.days',
    title: 'Days for which the club check is good; 0 asks for none',
    unit: 'days',
    start: 365,
    section: '3.3',
  }),
  clubParameter({
    id: 'club.annual-check.instructors-too',
    title: 'An instructor giving instruction needs the club check too',
    unit: 'flag',
    start: true,
    section: '3.3',
  }),
  clubParameter({
    id: 'club.differences-checkout.required',
    title: 'A differences checkout is needed after the equipment of an aircraft changed',
    unit: 'flag',
    start: true,
    section: '3.4',
  }),
  clubParameter({
    id: 'club.differences-checkout.elsewhere-counts',
    title: 'A differences checkout on the same equipment in another aircraft of the club counts',
    unit: 'flag',
    start: false,
    section: '3.4',
  }),
  clubParameter({
    id: 'club.differences-checkout.instructors-too',
    title: 'An instructor giving instruction needs the differences checkout too',
    unit: 'flag',
    start: true,
    section: '3.4',
  }),
];
