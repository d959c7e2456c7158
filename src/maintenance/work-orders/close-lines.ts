/** What the signature does to each line of a visit. */
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../../accounts/current-user.js';
import { gatherAircraft } from '../../decisions/gather/aircraft.js';
import { gatherClub } from '../../decisions/gather/club.js';
import { Compliance } from '../../fleet/airworthiness/compliance.entity.js';
import { ITEMS } from '../../fleet/airworthiness/items.service.js';
import type { ClosingService } from '../../fleet/squawks/closing.service.js';
import { addRecord, findRecord } from '../../platform/database/records.js';
import { tenthsOf } from '../../platform/http/views.js';
import {
  duesByItems,
  duesUnder14Cfr,
  hundredHourOverrunOn,
  type ItemDue,
  type ItemKind,
} from '../../rules/index.js';
import type { Holds } from '../signers/signer.entity.js';
import { UpgradeWish } from '../wishes/wish.entity.js';
import { authorityFor, onlyPreventive } from './authority.js';
import { owedBack } from './owed-back.js';
import type { LineResult } from './return-to-service.dto.js';
import { WorkLine } from './work-line.entity.js';
import type { WorkOrder } from './work-order.entity.js';
import { signatureNotEnough } from './work-orders.problems.js';
import { valueRefused } from '../../platform/problems/value-refused.js';

/** Who signed, and when. */
export interface Signature {
  on: string;
  statement: string;
  name: string;
  certificate: string;
  holds: Holds;
  /** Both, as they are kept. */
  signedBy: string;
}

interface Closing {
  user: SignedIn;
  order: WorkOrder;
  results: readonly LineResult[];
  signature: Signature;
  /** Total of the meter that inspections count by. */
  doneTenths: number;
  weighed: boolean;
  now: string;
  closing: ClosingService;
}

/** Closes every line. @returns what to look at. @throws ProblemException 422 naming the line. */
export async function closeLines(em: EntityManager, of: Closing): Promise<string[]> {
  const { clubId, id: orderId } = of.order;
  const lines = await em.find(WorkLine, { where: { clubId, orderId }, order: { id: 'ASC' } });
  const fieldOf = (id: string): string => `lines[${of.results.findIndex(({ lineId }) => lineId === id)}]`;
  requireEachOnce(lines, of.results);
  const { jurisdiction } = await gatherClub(em, of.now);
  const law = jurisdiction === 'US';
  const dues = await duesNow(em, of, law);
  const cautions: string[] = [];
  if (!law) cautions.push('Who may sign what is not judged under this law. Look it up.');
  if (law && onlyPreventive(of.signature.holds))
    cautions.push(
      `${of.signature.name} is on record as a pilot: the signature covers preventive maintenance alone (14 CFR part 43, appendix A(c)).`,
    );
  for (const line of lines) {
    const result = of.results.find(({ lineId }) => lineId === line.id)!;
    const { outcome, note = '' } = result;
    if (outcome === 'done')
      cautions.push(...(await doLine(em, of, { line, result, field: fieldOf(line.id), dues, law })));
    else if (line.kind === 'item' || line.kind === 'squawk')
      cautions.push(`“${line.title}” was not done and stands as it was.`);
    await em.update(WorkLine, { clubId, id: line.id }, { outcome, note });
  }
  return cautions;
}

function requireEachOnce(lines: readonly WorkLine[], results: readonly LineResult[]): void {
  for (const [index, { lineId }] of results.entries()) {
    if (!lines.some(({ id }) => id === lineId))
      throw valueRefused(`lines[${index}].lineId`, 'The work order has no such line. Read it again.');
    if (results.findIndex((one) => one.lineId === lineId) !== index)
      throw valueRefused(`lines[${index}].lineId`, 'The line is named twice.');
  }
  const open = lines.find(({ id }) => !results.some(({ lineId }) => lineId === id));
  if (open)
    throw valueRefused('lines', `Say of “${open.title}” whether it was done. Each line is named once.`);
}

async function duesNow(
  em: EntityManager,
  { order, signature, now }: Closing,
  law: boolean,
): Promise<ItemDue[]> {
  const [aircraft] = await gatherAircraft(em, [order.aircraftId], now, null);
  const { on } = signature;
  const { items } = aircraft!.facts;
  if (!items.known) return [];
  return law ? duesUnder14Cfr(items.value, on) : duesByItems(items.value, on);
}

interface OneLine {
  line: WorkLine;
  result: LineResult;
  field: string;
  dues: readonly ItemDue[];
  law: boolean;
}

async function doLine(em: EntityManager, of: Closing, one: OneLine): Promise<string[]> {
  const { line, result, field } = one;
  const { clubId, aircraftId } = of.order;
  const { signature } = of;
  if (line.kind === 'item') return doItem(em, of, one);
  requireAuthority(of, one, null);
  if (line.kind === 'squawk') {
    const { correctiveAction, parts } = result;
    if (!correctiveAction)
      throw valueRefused(`${field}.correctiveAction`, `Say what was done about “${line.title}”.`);
    const { name, certificate } = signature;
    const fix = { correctiveAction, signedBy: name, signedCertificate: certificate, parts };
    await of.closing.fixIn(em, of.user, { aircraftId, id: line.squawkId! }, fix);
  }
  if (line.kind === 'wish')
    await em.update(UpgradeWish, { clubId, id: line.wishId! }, { doneOn: signature.on });
  if (line.kind === 'weighing' && !of.weighed)
    throw valueRefused(
      'weighing',
      'The visit says that the aircraft was weighed. Give the figures, or say that it was not.',
    );
  return [];
}

async function doItem(em: EntityManager, of: Closing, one: OneLine): Promise<string[]> {
  const { line, result, field, dues } = one;
  const { clubId, aircraftId } = of.order;
  const { on, statement, signedBy } = of.signature;
  const item = await findRecord(em, ITEMS, { clubId, aircraftId, id: line.itemId! });
  requireAuthority(of, one, item);
  const doneOn = result.doneOn ?? on;
  if (doneOn > on)
    throw valueRefused(`${field}.doneOn`, `It was signed on ${on}; it cannot have been done after that.`);
  const doneTenths = tenthsOf(result.doneH) ?? of.doneTenths;
  const overrun = one.law ? hundredHourOverrunOn(on) * 10 : 0;
  const { dueTenths, caution } = owedBack(item, dues, doneTenths, overrun);
  await addRecord(
    em,
    { entity: Compliance, noun: 'compliance' },
    {
      ...{ clubId, itemId: item.id, doneOn, doneTenths, dueTenths, signedBy },
      ...{ statement: result.statement ?? statement, detail: result.detail ? { ...result.detail } : null },
    },
  );
  return caution === null ? [] : [caution];
}

function requireAuthority(of: Closing, { line, field, law }: OneLine, item: { kind: ItemKind } | null): void {
  if (!law) return;
  const { holds, citation } = authorityFor(line.kind, item?.kind ?? null);
  const { signature } = of;
  if (holds.includes(signature.holds)) return;
  throw signatureNotEnough(
    `${field}.outcome`,
    `“${line.title}” is approved by ${holds.map((one) => one.replaceAll('-', ' ')).join(', ')} (${citation}); ` +
      `${signature.name} is on record as ${signature.holds.replaceAll('-', ' ')}.`,
  );
}
