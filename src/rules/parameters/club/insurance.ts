import { clubParameter } from './club-parameter.js';

/** What the club asks for before it lets somebody fly: insurance that covers them, and who they are. */
export const CLUB_INSURANCE = [
  clubParameter({
    id: 'club.insurance.required',
    title: 'No aircraft flies without insurance terms on record',
    unit: 'flag',
    start: false,
    section: '8.1',
  }),
  clubParameter({
    id: 'club.identity.required',
    title: 'An officer has seen an identity document of the member',
    unit: 'flag',
    start: false,
    section: '2.4',
  }),
  clubParameter({
    id: 'club.identity.days-good',
    title: 'Days for which seeing an identity document is good; 0: for good',
    unit: 'days',
    start: 0,
    section: '2.4',
  }),
  clubParameter({
    id: 'club.background.required',
    title: "The club has looked into the member's background",
    unit: 'flag',
    start: false,
    section: '2.4',
  }),
  clubParameter({
    id: 'club.background.days-good',
    title: 'Days for which a background check is good; 0: for good',
    unit: 'days',
    start: 0,
    section: '2.4',
  }),
  clubParameter({
    id: 'club.citizenship.required-for-training',
    title: 'Evidence of citizenship, or of eligibility for flight training, is seen before instruction',
    unit: 'flag',
    start: false,
    section: '2.5',
  }),
  clubParameter({
    id: 'club.citizenship.days-good',
    title: 'Days for which evidence of citizenship or eligibility is good; 0: for good',
    unit: 'days',
    start: 0,
    section: '2.5',
  }),
];
