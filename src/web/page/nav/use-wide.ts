import { useEffect, useState } from 'preact/hooks';

/** Where the bar of a desk begins; the same number stands in nav.css and bell.css. */
const DESK = '(min-width: 861px)';

/** Is the window as wide as a desk's? */
export function useWide(): boolean {
  const [wide, setWide] = useState(() => matchMedia(DESK).matches);
  useEffect(() => {
    const query = matchMedia(DESK);
    const tell = () => setWide(query.matches);
    query.addEventListener('change', tell);
    return () => query.removeEventListener('change', tell);
  }, []);
  return wide;
}
