import { useEffect, useState } from 'preact/hooks';
import { estimate } from '../account/estimate.js';
import { ApiProblem, call } from '../api/client.js';
import type { Answers, Booking, Decision, Me, Problem } from '../api/types.js';
import { AnswerList } from '../answer/answer-list.js';
import { Displaced } from '../calendar/displaced.js';
import { OverdueAlerts } from '../flights/overdue.js';
import { StandingAnswers } from '../calendar/standing.js';
import { MyFlights, refreshFlights } from '../calendar/my-flights.js';
import { newKey } from '../parts/key.js';
import { spanIn } from '../parts/time.js';
import { looksAfterOthers, setsAside } from '../session/roles.js';
import { airfields, names } from '../session/session.js';
import { BookBest } from '../standby/book-best.js';
import { When } from '../timeline/when.js';
import { AskForm } from './ask-form.js';
import { firstForm, toRequest, type FlightForm } from './flight.js';
import { SeriesForm } from './series-form.js';
import { lastForm, startAsk } from './shared-form.js';
import { useFreeInstructors } from './use-free-instructors.js';

interface Asked {
  request: object;
  answers: Answers;
  said: string;
}

/** Ask first: one sentence, an answer for each aircraft, and the booking. */
export function AskPage({ me }: { me: Me }) {
  const { zone } = me.club;
  const [form, setForm] = useState<FlightForm>(() => firstForm(zone));
  const [asked, setAsked] = useState<Asked | null>(null);
  const [wrong, setWrong] = useState<{ field: string; message: string } | null>(null);
  const [busy, setBusy] = useState(false);

  const [only, setOnly] = useState<{ id: string; registration: string } | null>(null);
  const free = useFreeInstructors(form, zone);
  const flies = form.memberId === '' ? me.memberId : form.memberId;
  const start = startAsk.value;

  const change = (part: Partial<FlightForm>) => {
    setForm({ ...form, ...part });
    setWrong(null);
  };

  useEffect(() => {
    lastForm.value = form;
  }, [form]);
  useEffect(() => {
    if (start === null) return;
    startAsk.value = null;
    const { aircraft, ...times } = start;
    change(times);
    setOnly(aircraft);
    setAsked(null);
  }, [start]);

  const ask = async () => {
    const read = toRequest(form, zone);
    if ('message' in read) return setWrong(read);
    setBusy(true);
    setWrong(null);
    try {
      const answers = await call<Answers>('POST', '/decisions', {
        ...read.request,
        ...(only === null ? {} : { aircraftIds: [only.id] }),
      });
      const { departs, arrives } = read.request as { departs: string; arrives: string };
      void estimate(read.request as Parameters<typeof estimate>[0]);
      const who = names.value.find(({ id }) => id === form.memberId)?.name;
      const said = `${who === undefined ? '' : `${who}, `}${spanIn(zone, departs, arrives)}`;
      setAsked({ request: read.request, answers, said });
    } catch (error) {
      setWrong(told(error));
    } finally {
      setBusy(false);
    }
  };

  const book = async (decision: Decision, override: object = {}): Promise<Problem | null> => {
    try {
      await call<Booking>(
        'POST',
        '/bookings',
        { ...asked!.request, aircraftId: decision.aircraft.id, ...override },
        // One refused keeps its key; with a reason it is another request.
        { 'Idempotency-Key': 'override' in override ? newKey() : decision.id },
      );
      await refreshFlights(me.memberId);
      return null;
    } catch (error) {
      if (error instanceof ApiProblem) return error.problem;
      throw error;
    }
  };

  return (
    <main class="page">
      <Displaced me={me} />
      <OverdueAlerts me={me} />
      <StandingAnswers me={me} />
      <section aria-label="The flight">
        <AskForm
          form={form}
          airfields={airfields.value}
          people={looksAfterOthers(me.roles) ? names.value.filter(({ id }) => id !== me.memberId) : []}
          instructors={free(names.value.filter(({ id, instructor }) => instructor && id !== flies))}
          wrong={wrong}
          busy={busy}
          change={change}
          ask={() => void ask()}
        />
        {only && (
          <p class="hint only">
            Asked of {only.registration} alone.{' '}
            <button class="quiet" onClick={() => setOnly(null)}>
              Ask the whole club
            </button>
          </p>
        )}
        <When form={form} zone={zone} change={change} />
      </section>
      <div class="columns">
        <section aria-label="Answers" aria-live="polite" class="answers">
          {asked ? (
            <>
              <BookBest
                key={asked.said}
                asked={asked}
                zone={zone}
                booked={() => refreshFlights(me.memberId)}
              />
              <AnswerList
                asked={asked}
                zone={zone}
                book={book}
                setsAside={setsAside(me)}
                more={({ id, aircraft }) => (
                  <SeriesForm
                    key={id}
                    request={repeatable(asked.request)}
                    aircraftId={aircraft.id}
                    registration={aircraft.registration}
                    zone={zone}
                    booked={() => refreshFlights(me.memberId)}
                  />
                )}
              />
            </>
          ) : (
            <p class="hint">Say what you want to fly; every aircraft answers.</p>
          )}
        </section>
        <MyFlights me={me} />
      </div>
    </main>
  );
}

/** The weather of one day says nothing of the next. */
function repeatable(request: object): object {
  const { weather: _weather, ...rest } = request as { weather?: unknown };
  return rest;
}

function told(error: unknown): { field: string; message: string } {
  if (!(error instanceof ApiProblem)) throw error;
  const first = error.problem.errors?.[0];
  return { field: first?.field ?? '', message: first?.message ?? error.problem.detail };
}
