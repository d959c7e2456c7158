import { clubParameter } from './club-parameter.js';

/** Members' accounts, officers' discretion, papers. */
export const CLUB_STANDING = [
  clubParameter({
    id: 'club.standing.arrears-days',
    title: 'Days for which an account in arrears may still book',
    unit: 'days',
    start: 30,
    section: '2.2',
  }),
  clubParameter({
    id: 'club.crew.second-pilot-is-passenger',
    title: 'A second rated pilot who is not required crew counts as a passenger',
    unit: 'flag',
    start: true,
    section: '5.1',
  }),
  clubParameter({
    id: 'club.override.allowed',
    title: 'An officer may override a club rule, with a reason',
    unit: 'flag',
    start: true,
    section: '6.1',
  }),
  clubParameter({
    id: 'club.papers.unverified-count',
    title: 'Papers a member entered count before an officer has seen them',
    unit: 'flag',
    start: false,
    section: '2.3',
  }),
];
