/** The bellcrank: a lever with a corner, turning motion from one direction into another. */
export function Mark() {
  return (
    <svg class="mark" viewBox="0 0 32 32" aria-hidden="true">
      <path d="M7 5v20h20" />
      <circle cx="7" cy="25" r="3.2" />
    </svg>
  );
}
