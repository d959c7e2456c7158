import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import type { Me } from './api/types.js';
import { AskPage } from './ask/ask-page.js';
import { MinePage } from './calendar/mine-page.js';
import { Navigation } from './nav/navigation.js';
import { listen } from './live/live.js';
import type { Place } from './nav/places.js';
import { lazy } from './parts/lazy.js';
import { place } from './parts/route.js';
import { isOfficer } from './session/roles.js';
import { me, resume } from './session/session.js';
import { SignIn } from './session/sign-in.js';

// Each page is a script of its own; the first page, and what it is made of, is in the first.
const AccountPage = lazy(async () => (await import('./account/account-page.js')).AccountPage);
const BlocksPage = lazy(async () => (await import('./blocks/blocks-page.js')).BlocksPage);
const BoardPage = lazy(async () => (await import('./board/board-page.js')).BoardPage);
const ChargesPage = lazy(async () => (await import('./account/charges-page.js')).ChargesPage);
const CheckoutsPage = lazy(async () => (await import('./checkouts/checkouts-page.js')).CheckoutsPage);
const DayPage = lazy(async () => (await import('./day/day-page.js')).DayPage);
const EquipmentPage = lazy(async () => (await import('./equipment/equipment-page.js')).EquipmentPage);
const readFlights = () => import('./flights/flights-page.js');
const FlightsPage = lazy(async () => (await readFlights()).FlightsPage);
const HandbookPage = lazy(async () => (await import('./handbook/handbook-page.js')).HandbookPage);
const LimitsPage = lazy(async () => (await import('./limits/limits-page.js')).LimitsPage);
const LogPage = lazy(async () => (await import('./log/log-page.js')).LogPage);
const MaintenancePage = lazy(async () => (await import('./maintenance/maintenance-page.js')).MaintenancePage);
const MyDataPage = lazy(async () => (await import('./my-data/my-data-page.js')).MyDataPage);
const NoticesPage = lazy(async () => (await import('./notices/notices-page.js')).NoticesPage);
const PapersPage = lazy(async () => (await import('./papers/papers-page.js')).PapersPage);
const PracticePage = lazy(async () => (await import('./practice/practice-page.js')).PracticePage);
const RuleBookPage = lazy(async () => (await import('./rules/rule-book.js')).RuleBookPage);
const SeeToPage = lazy(async () => (await import('./calendar/see-to-page.js')).SeeToPage);
const ShopPage = lazy(async () => (await import('./shop/shop-page.js')).ShopPage);
const SquawksPage = lazy(async () => (await import('./squawks/squawks-page.js')).SquawksPage);
const StandbyPage = lazy(async () => (await import('./standby/standby-page.js')).StandbyPage);
const StatusPage = lazy(async () => (await import('./status/status-page.js')).StatusPage);
const StudentsPage = lazy(async () => (await import('./checkouts/students-page.js')).StudentsPage);
const TeachingPage = lazy(async () => (await import('./teaching/teaching-page.js')).TeachingPage);

interface Page {
  /** `part` is what is open on it. */
  show: (me: Me, part: string) => ComponentChildren;
  /** Its link, and in which group it stands. */
  place?: Place;
  /** For a page without a link: the page it is reached from. */
  under?: string;
}

/** By then the first page is through with what it reads. */
const SETTLED_MS = 2000;

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
    place: { in: 'safety', name: (roles) => (isOfficer(roles) ? 'Safety board' : 'Safety reports') },
    show: (me) => <BoardPage me={me} />,
  },
  '/see-to': {
    place: { in: 'safety', name: 'Flights of others', for: ['safety-officer', 'administrator'] },
    show: (me) => <SeeToPage me={me} />,
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

/** A page of one aircraft, asked for without one, leads back to where the aircraft are. */
const shown = (page: Page, whose: Me, part: string): ComponentChildren =>
  page.show(whose, part) || (page.under !== undefined && PAGES[page.under]!.show(whose, ''));

export function App() {
  useEffect(() => {
    void resume();
  }, []);
  const whose = me.value?.memberId;
  useEffect(() => (whose === undefined ? undefined : listen()), [whose]);
  useEffect(() => {
    if (whose === undefined) return;
    // At the aircraft the line may be gone: dispatch and return are there before they are asked for.
    const timer = setTimeout(() => void readFlights().catch(() => undefined), SETTLED_MS);
    return () => clearTimeout(timer);
  }, [whose]);

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
      {page && shown(page, me.value, part)}
    </>
  );
}
