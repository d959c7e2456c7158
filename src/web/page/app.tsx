import type { ComponentChildren } from 'preact';
import { useEffect } from 'preact/hooks';
import type { Me } from './api/types.js';
import { AskPage } from './ask/ask-page.js';
import { HandbookPage } from './handbook/handbook-page.js';
import { BoardPage } from './board/board-page.js';
import { EquipmentPage } from './equipment/equipment-page.js';
import { LogPage } from './log/log-page.js';
import { MaintenancePage } from './maintenance/maintenance-page.js';
import { PapersPage } from './papers/papers-page.js';
import { Link } from './parts/link.js';
import { Mark } from './parts/mark.js';
import { place } from './parts/route.js';
import { PracticePage } from './practice/practice-page.js';
import { RuleBookPage } from './rules/rule-book.js';
import { me, resume, signOut } from './session/session.js';
import { SignIn } from './session/sign-in.js';
import { ShopPage } from './shop/shop-page.js';
import { SquawksPage } from './squawks/squawks-page.js';
import { StatusPage } from './status/status-page.js';

/** Pages by address, besides the first; `part` is what is open on one. */
const PAGES: Record<string, (me: Me, part: string) => ComponentChildren> = {
  '/maintenance': (me) => <MaintenancePage me={me} />,
  '/equipment': (me, part) => part && <EquipmentPage me={me} aircraftId={part} />,
  '/handbook': (me, part) => part && <HandbookPage key={part} me={me} aircraftId={part} />,
  '/shop': (me, part) => <ShopPage me={me} open={part || null} />,
  '/status': (me, part) => part && <StatusPage key={part} me={me} aircraftId={part} />,
  '/squawks': (me, part) => <SquawksPage me={me} open={part || null} />,
  '/log': (me, part) => <LogPage me={me} part={part} />,
  '/practice': (me) => <PracticePage me={me} />,
  '/papers': (me) => <PapersPage me={me} />,
  '/board': (me) => <BoardPage me={me} />,
  '/rules': (me, part) => <RuleBookPage zone={me.club.zone} open={part || null} />,
};

export function App() {
  useEffect(() => {
    void resume();
  }, []);

  if (me.value === undefined) return <p class="waiting">Opening…</p>;
  if (me.value === null) return <SignIn />;
  const { path, part } = place.value;
  const page = PAGES[path];
  return (
    <>
      <header class="top">
        <h1 class="name">
          <Mark /> Bellcrank
        </h1>
        <span class="club">{me.value.club.name}</span>
        <nav aria-label="Pages">
          <Link to="/">Ask</Link>
          <Link to="/log">Log</Link>
          <Link to="/practice">Practice</Link>
          <Link to="/maintenance">Maintenance</Link>
          <Link to="/squawks">Squawks</Link>
          <Link to="/shop">Shop</Link>
          <Link to="/papers">Papers</Link>
          <Link to="/board">Safety</Link>
          <Link to="/rules">Rule book</Link>
        </nav>
        <span class="who">
          {me.value.name}
          <button class="quiet" onClick={() => void signOut()}>
            Sign out
          </button>
        </span>
      </header>
      {/* Stays while another page is read, with what was asked and answered. */}
      <div hidden={page !== undefined}>
        <AskPage me={me.value} />
      </div>
      {page?.(me.value, part)}
    </>
  );
}
