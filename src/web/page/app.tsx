import { useEffect } from 'preact/hooks';
import { AskPage } from './ask/ask-page.js';
import { Mark } from './parts/mark.js';
import { me, resume, signOut } from './session/session.js';
import { SignIn } from './session/sign-in.js';

export function App() {
  useEffect(() => {
    void resume();
  }, []);

  if (me.value === undefined) return <p class="waiting">Opening…</p>;
  if (me.value === null) return <SignIn />;
  return (
    <>
      <header class="top">
        <h1 class="name">
          <Mark /> Bellcrank
        </h1>
        <span class="club">{me.value.club.name}</span>
        <span class="who">
          {me.value.name}
          <button class="quiet" onClick={() => void signOut()}>
            Sign out
          </button>
        </span>
      </header>
      <AskPage me={me.value} />
    </>
  );
}
