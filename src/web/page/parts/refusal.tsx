/** Why something was refused; nothing while nothing was. */
export function Refusal({ problem }: { problem: string | null }) {
  if (problem === null) return null;
  return (
    <p class="problem" role="alert">
      {problem}
    </p>
  );
}
