import { useState } from 'preact/hooks';
import { ApiProblem } from '../api/client.js';
import { Mark } from '../parts/mark.js';
import { signIn } from './session.js';

export function SignIn() {
  const [problem, setProblem] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);

  const submit = async (event: SubmitEvent) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget as HTMLFormElement);
    const text = (name: string) => String(form.get(name) ?? '').trim();
    setBusy(true);
    setProblem(null);
    try {
      await signIn(text('club'), text('email').toLowerCase(), String(form.get('password') ?? ''));
    } catch (error) {
      setProblem(error instanceof ApiProblem ? error.problem.detail : 'Signing in failed. Try again.');
    } finally {
      setBusy(false);
    }
  };

  return (
    <main class="sign-in">
      <h1>
        <Mark /> Bellcrank
      </h1>
      <p class="lead">May I take this aircraft for this flight, and if not, what would make it a yes?</p>
      <form onSubmit={submit} aria-describedby={problem ? 'sign-in-problem' : undefined}>
        <label>
          Club
          <input name="club" required autocomplete="organization" autocapitalize="none" spellcheck={false} />
        </label>
        <label>
          E-mail
          <input name="email" type="email" required autocomplete="username" />
        </label>
        <label>
          Password
          <input name="password" type="password" required autocomplete="current-password" />
        </label>
        {problem && (
          <p class="problem" role="alert" id="sign-in-problem">
            {problem}
          </p>
        )}
        <button class="main" disabled={busy}>
          {busy ? 'Signing in…' : 'Sign in'}
        </button>
      </form>
    </main>
  );
}
