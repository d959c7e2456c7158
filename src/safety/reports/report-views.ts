import { type EntityManager, In } from 'typeorm';
import { show } from '../../platform/http/views.js';
import { SafetyReportView, SafetyStepView } from './report.dto.js';
import type { SafetyReport } from './report.entity.js';
import { SafetyStep } from './step.entity.js';

/** One step, with the name of who sees to it. */
export const stepView = async (em: EntityManager, row: SafetyStep): Promise<SafetyStepView> =>
  (await stepViews(em, [row]))[0]!;

async function stepViews(em: EntityManager, rows: readonly SafetyStep[]): Promise<SafetyStepView[]> {
  const names = await namesOf(
    em,
    'members',
    rows.map(({ responsibleId }) => responsibleId),
  );
  return rows.map((row) => show(SafetyStepView, row, { responsibleName: names.get(row.responsibleId)! }));
}

/** With their steps and names, in three statements however many there are. */
export async function reportViews(
  em: EntityManager,
  rows: readonly SafetyReport[],
): Promise<SafetyReportView[]> {
  if (rows.length === 0) return [];
  const { clubId } = rows[0]!;
  const steps = await em.find(SafetyStep, {
    where: { clubId, reportId: In(rows.map(({ id }) => id)) },
    order: { id: 'ASC' },
  });
  const views = await stepViews(em, steps);
  const people = await namesOf(
    em,
    'members',
    rows.map(({ reporterId }) => reporterId),
  );
  const aircraft = await namesOf(
    em,
    'aircraft',
    rows.map(({ aircraftId }) => aircraftId),
  );
  return rows.map((row) =>
    show(SafetyReportView, row, {
      ...{ reporterName: people.get(row.reporterId ?? '') ?? null },
      ...{ registration: aircraft.get(row.aircraftId ?? '') ?? null },
      steps: views.filter((_view, index) => steps[index]!.reportId === row.id),
    }),
  );
}

async function namesOf(
  em: EntityManager,
  table: 'members' | 'aircraft',
  ids: readonly (string | null)[],
): Promise<Map<string, string>> {
  const column = table === 'members' ? 'name' : 'registration';
  const rows: { id: string; name: string }[] = await em.query(
    `SELECT id, ${column} AS name FROM ${table} WHERE club_id = bellcrank_club() AND id = ANY ($1::uuid[])`,
    [ids.filter((id) => id !== null)],
  );
  return new Map(rows.map(({ id, name }) => [id, name]));
}
