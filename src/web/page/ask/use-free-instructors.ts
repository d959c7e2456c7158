import { useEffect, useState } from 'preact/hooks';
import { call } from '../api/client.js';
import type { PersonName } from '../api/types.js';
import { clockIn, instantIn } from '../parts/time.js';
import type { FlightForm } from './flight.js';

interface Free {
  memberId: string;
  free: boolean;
  hours: 'within' | 'outside' | 'none-kept';
  busyUntil: string | null;
}

/** Says beside instructors' names whether they are free at the time of the form, those who are first. */
export function useFreeInstructors(form: FlightForm, zone: string): (people: PersonName[]) => PersonName[] {
  const [found, setFound] = useState<Free[]>([]);
  const taught = form.purpose === 'dual' || form.purpose === 'checkout';
  const departs = instantIn(zone, form.date, form.from);
  const arrives = instantIn(zone, form.date, form.to);
  useEffect(() => {
    if (!taught || !departs || !arrives || arrives <= departs) return setFound([]);
    let asked = true;
    call<{ items: Free[] }>('GET', `/instructors/free?departs=${departs}&arrives=${arrives}`).then(
      ({ items }) => asked && setFound(items),
      // The names alone serve as well; the answer tells the rest.
      () => asked && setFound([]),
    );
    return () => {
      asked = false;
    };
  }, [taught, departs, arrives]);
  return (people) => {
    const of = (id: string) => found.find(({ memberId }) => memberId === id);
    return people
      .map((person) => ({ ...person, name: `${person.name}${said(of(person.id), zone)}` }))
      .sort((a, b) => Number(of(b.id)?.free ?? false) - Number(of(a.id)?.free ?? false));
  };
}

function said(one: Free | undefined, zone: string): string {
  if (!one) return '';
  if (one.busyUntil) return `, booked until ${clockIn(zone, one.busyUntil)}`;
  if (one.hours === 'outside') return ', outside teaching hours';
  return one.hours === 'within' ? ', free' : ', nothing booked';
}
