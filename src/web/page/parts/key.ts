import { useRef } from 'preact/hooks';

/** An Idempotency-Key nobody else uses. Of random bytes: a browser makes UUIDs on a secure line only. */
export const newKey = (): string =>
  [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, '0')).join('');

/** The key that what is sent goes under: the same sent again after a lost answer, the same key; anything else, a new one. */
export function useKeyFor(): (what: string) => string {
  const sent = useRef<{ what: string; key: string } | null>(null);
  return (what) => {
    if (sent.current?.what !== what) sent.current = { what, key: newKey() };
    return sent.current.key;
  };
}
