import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import { AccountPage } from './account/account-page.js';
import { BlocksPage } from './blocks/blocks-page.js';
import { BoardPage } from './board/board-page.js';
import { ChargesPage } from './account/charges-page.js';
import { CheckoutsPage } from './checkouts/checkouts-page.js';
import { DayPage } from './day/day-page.js';
import { EquipmentPage } from './equipment/equipment-page.js';
import { FlightsPage } from './flights/flights-page.js';
import { HandbookPage } from './handbook/handbook-page.js';
import { LimitsPage } from './limits/limits-page.js';
import { LogPage } from './log/log-page.js';
import { MaintenancePage } from './maintenance/maintenance-page.js';
import { MyDataPage } from './my-data/my-data-page.js';
import { NoticesPage } from './notices/notices-page.js';
import { PapersPage } from './papers/papers-page.js';
import { PracticePage } from './practice/practice-page.js';
import { RuleBookPage } from './rules/rule-book.js';
import { ShopPage } from './shop/shop-page.js';
import { SquawksPage } from './squawks/squawks-page.js';
import { StandbyPage } from './standby/standby-page.js';
import { StatusPage } from './status/status-page.js';
import { StudentsPage } from './checkouts/students-page.js';
import { TeachingPage } from './teaching/teaching-page.js';
import type { Me } from './api/types.js';
import { AskPage } from './ask/ask-page.js';
import { MinePage } from './calendar/mine-page.js';
import { Navigation } from './nav/navigation.js';
import { listen } from './live/live.js';
import type { Place } from './nav/places.js';
import { place } from './parts/route.js';
import { me, resume } from './session/session.js';
import { SignIn } from './session/sign-in.js';

interface Page {
  /** `part` is what is open on it. */
  show: (me: Me, part: string) => ComponentChildren;
  /** Its link, and in which group it stands. */
  place?: Place;
  /** For a page without a link: the page it is reached from. */
  under?: string;
}

const officer = (roles: readonly string[]) =>
  roles.includes('safety-officer') || roles.includes('administrator');

/** Pages by address, in the order their links stand in; everything said about them elsewhere is taken from here. */
const PAGES: Record<string, Page> = {
  // The first page is shown below, since it stays.
  '/': { place: { in: 'fly', name: 'Ask' }, show: () => null },
  '/mine': { place: { in: 'fly', name: 'My flights' }, show: (me) => <MinePage me={me} /> },
  '/day': {
    place: { in: 'fly', name: 'Day' },
    show: (me, part) => <DayPage key={part} me={me} part={part} />,
  },
  '/flights': {
    place: { in: 'fly', name: 'Out now' },
    show: (me, part) => <FlightsPage key={part} me={me} open={part || null} />,
  },
  '/standby': {
    place: { in: 'fly', name: 'Standby' },
    show: (me, part) => <StandbyPage key={part} me={me} part={part} />,
  },
  '/log': { place: { in: 'record', name: 'Log' }, show: (me, part) => <LogPage me={me} part={part} /> },
  '/papers': { place: { in: 'record', name: 'Papers' }, show: (me) => <PapersPage me={me} /> },
  '/practice': { place: { in: 'record', name: 'Practice' }, show: (me) => <PracticePage me={me} /> },
  '/checkouts': {
    place: { in: 'record', name: 'Checkouts' },
    show: (me, part) => <CheckoutsPage me={me} part={part} />,
  },
  '/students': {
    place: { in: 'teach', name: 'Students', for: ['instructor'] },
    show: (me, part) => <StudentsPage me={me} open={part || null} />,
  },
  '/teaching': {
    place: { in: 'teach', name: 'Teaching hours', for: ['instructor'] },
    show: (me) => <TeachingPage me={me} />,
  },
  '/limits': {
    place: { in: 'record', name: 'Limits' },
    show: (me, part) => <LimitsPage key={part} me={me} memberId={part || null} />,
  },
  '/maintenance': {
    place: { in: 'fleet', name: 'Hours left' },
    show: (me) => <MaintenancePage me={me} />,
  },
  '/squawks': {
    place: { in: 'fleet', name: 'Squawks' },
    show: (me, part) => <SquawksPage me={me} open={part || null} />,
  },
  '/shop': {
    place: { in: 'fleet', name: 'Shop' },
    show: (me, part) => <ShopPage me={me} open={part || null} />,
  },
  '/blocks': {
    place: { in: 'fleet', name: 'Blocked time', for: ['maintenance-coordinator', 'administrator'] },
    show: (me) => <BlocksPage me={me} />,
  },
  '/equipment': {
    under: '/maintenance',
    show: (me, part) => part && <EquipmentPage me={me} aircraftId={part} />,
  },
  '/handbook': {
    under: '/maintenance',
    show: (me, part) => part && <HandbookPage key={part} me={me} aircraftId={part} />,
  },
  '/status': {
    under: '/maintenance',
    show: (me, part) => part && <StatusPage key={part} me={me} aircraftId={part} />,
  },
  '/board': {
    place: { in: 'safety', name: (roles) => (officer(roles) ? 'Safety board' : 'Safety reports') },
    show: (me) => <BoardPage me={me} />,
  },
  '/account': {
    place: { in: 'own', name: 'Account' },
    show: (me, part) => <AccountPage key={part} me={me} memberId={part || null} />,
  },
  '/charges': {
    place: { in: 'club', name: 'Accounts and rates', for: ['administrator'] },
    show: (me) => <ChargesPage me={me} />,
  },
  '/notices': {
    place: { in: 'own', name: 'Notices' },
    show: (me, part) => <NoticesPage me={me} part={part} />,
  },
  '/my-data': { place: { in: 'own', name: 'Your data' }, show: (me) => <MyDataPage me={me} /> },
  '/rules': {
    place: { in: 'club', name: 'Rule book' },
    show: (me, part) => <RuleBookPage zone={me.club.zone} open={part || null} />,
  },
};

export function App() {
  useEffect(() => {
    void resume();
  }, []);
  const whose = me.value?.memberId;
  useEffect(() => (whose === undefined ? undefined : listen()), [whose]);

  if (me.value === undefined) return <p class="waiting">Opening…</p>;
  if (me.value === null) return <SignIn />;
  const { path, part } = place.value;
  const page = path === '/' ? undefined : PAGES[path];
  return (
    <>
      <Navigation me={me.value} pages={PAGES} />
      {/* Stays while another page is read, with what was asked and answered. */}
      <div hidden={page !== undefined}>
        <AskPage me={me.value} />
      </div>
      {page?.show(me.value, part)}
    </>
  );
}
