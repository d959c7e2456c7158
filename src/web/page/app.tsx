import { useEffect } from 'preact/hooks';
import { AskPage } from './ask/ask-page.js';
import { HandbookPage } from './handbook/handbook-page.js';
import { BoardPage } from './board/board-page.js';
import { EquipmentPage } from './equipment/equipment-page.js';
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

export function App() {
  useEffect(() => {
    void resume();
  }, []);

  if (me.value === undefined) return <p class="waiting">Opening…</p>;
  if (me.value === null) return <SignIn />;
  const { path, part } = place.value;
  const elsewhere = [
    '/rules',
    '/maintenance',
    '/squawks',
    '/equipment',
    '/shop',
    '/status',
    '/handbook',
    '/practice',
    '/papers',
    '/board',
  ].includes(path);
  return (
    <>
      <header class="top">
        <h1 class="name">
          <Mark /> Bellcrank
        </h1>
        <span class="club">{me.value.club.name}</span>
        <nav aria-label="Pages">
          <Link to="/">Ask</Link>
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
      <div hidden={elsewhere}>
        <AskPage me={me.value} />
      </div>
      {path === '/maintenance' && <MaintenancePage me={me.value} />}
      {path === '/equipment' && part && <EquipmentPage me={me.value} aircraftId={part} />}
      {path === '/handbook' && part && <HandbookPage key={part} me={me.value} aircraftId={part} />}
      {path === '/shop' && <ShopPage me={me.value} open={part || null} />}
      {path === '/status' && part && <StatusPage key={part} me={me.value} aircraftId={part} />}
      {path === '/squawks' && <SquawksPage me={me.value} open={part || null} />}
      {path === '/practice' && <PracticePage me={me.value} />}
      {path === '/papers' && <PapersPage me={me.value} />}
      {path === '/board' && <BoardPage me={me.value} />}
      {path === '/rules' && <RuleBookPage zone={me.value.club.zone} open={part || null} />}
    </>
  );
}
