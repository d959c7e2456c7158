import { useEffect, useRef, useState } from 'preact/hooks';
import type { Me } from '../api/types.js';
import { StandingAnswers } from '../calendar/standing.js';
import { isOfficer } from '../session/roles.js';
import './board.css';
import { LapseBoard } from './lapse-board.js';
import { OverrideList } from './override-list.js';
import { PracticeGapsBoard } from './practice-gaps.js';
import { RefusalTrend } from './refusal-trend.js';
import { ReportForm } from './report-form.js';
import { ReportList } from './report-list.js';

/** For everybody: tell what could hurt somebody. For officers: who lapses next, and all that is to be followed up. */
export function BoardPage({ me }: { me: Me }) {
  const heading = useRef<HTMLHeadingElement>(null);
  const [filed, setFiled] = useState(0);
  const officer = isOfficer(me.roles);

  useEffect(() => {
    heading.current?.focus();
  }, []);

  return (
    <main class="page board">
      <h2 ref={heading} tabIndex={-1}>
        Safety
      </h2>
      {officer && <LapseBoard me={me} />}
      {officer && <StandingAnswers me={me} everybody />}
      <ReportForm me={me} filed={() => setFiled(filed + 1)} />
      <ReportList key={filed} me={me} officer={officer} />
      {officer && <OverrideList zone={me.club.zone} />}
      {officer && <PracticeGapsBoard me={me} />}
      {officer && <RefusalTrend me={me} />}
    </main>
  );
}
