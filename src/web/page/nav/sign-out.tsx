import { signOut } from '../session/session.js';

export function SignOut() {
  return (
    <button class="quiet leave" onClick={() => void signOut()}>
      Sign out
    </button>
  );
}
