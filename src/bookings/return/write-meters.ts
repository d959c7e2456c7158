import type { EntityManager } from 'typeorm';
import { MeterReadingVoid } from '../../fleet/meters/meter-reading-void.entity.js';
import type { MetersService } from '../../fleet/meters/meters.service.js';
import { pointerTo, ProblemException } from '../../platform/problems/index.js';
import { toSeconds } from '../../rules/index.js';
import { tenthsOf } from '../../platform/http/views.js';
import type { DispatchRow } from '../dispatch/dispatch.sql.js';
import type { FlightFlownDto } from './return.dto.js';
import { refuse } from './return.problems.js';
import type { MeterFlown, ReturnRow } from './return.sql.js';

interface Flown {
  clubId: string;
  aircraftId: string;
  body: FlightFlownDto;
  dispatch: DispatchRow;
}

/** Writes what the meters show after the flight. @throws 422 naming the meter */
export async function writeMeters(
  em: EntityManager,
  meters: MetersService,
  of: Flown,
): Promise<MeterFlown[]> {
  const flown: MeterFlown[] = [];
  for (const index of of.body.meters.keys()) flown.push(await writeMeter(em, meters, of, index));
  return flown;
}

/** Takes back the readings of the return before that are others now, and writes the right ones in their place. */
export async function correctMeters(
  em: EntityManager,
  meters: MetersService,
  of: Flown & { before: ReturnRow; by: string; because: string },
): Promise<MeterFlown[]> {
  const { body, before } = of;
  const moved = body.arrivedAt !== before.arrivedAt;
  const flown: MeterFlown[] = [];
  for (const [index, { kind, shownH }] of body.meters.entries()) {
    const old = before.meters.find((one) => one.kind === kind)!;
    if (!moved && old.shownTenths === tenthsOf(shownH)) {
      flown.push(old);
      continue;
    }
    const key = { clubId: of.clubId, readingId: old.readingId };
    // The coordinator may have taken it back before.
    if (!(await em.existsBy(MeterReadingVoid, key)))
      await em.insert(MeterReadingVoid, {
        ...key,
        voidedBy: of.by,
        reason: `Return corrected: ${of.because}`,
      });
    flown.push(await writeMeter(em, meters, of, index));
  }
  return flown;
}

async function writeMeter(
  em: EntityManager,
  meters: MetersService,
  { clubId, aircraftId, body, dispatch }: Flown,
  index: number,
): Promise<MeterFlown> {
  const { kind, shownH, confirmJump = false } = body.meters[index]!;
  const out = dispatch.meters.find((one) => one.kind === kind)!;
  const shownTenths = tenthsOf(shownH);
  const field = `meters[${index}].shownH`;
  if (shownTenths < out.shownTenths)
    throw refuse(field, `It showed ${(out.shownTenths / 10).toFixed(1)} h before departure. Read it again.`);
  if (!confirmJump) requireNoJump(field, shownTenths - out.shownTenths, body);
  try {
    const reading = await meters.record(em, {
      ...{ clubId, aircraftId, kind, shownTenths, readAt: body.arrivedAt },
      ...{ source: 'dispatch' as const, confirmJump, note: 'After the flight' },
    });
    return {
      ...{ kind, readingId: reading.id, shownTenths },
      ...{ outTenths: out.totalTenths, inTenths: out.totalTenths + shownTenths - out.shownTenths },
    };
  } catch (error) {
    if (!(error instanceof ProblemException) || error.errors.length === 0) throw error;
    throw new ProblemException(error.code, {
      ...{
        status: error.getStatus(),
        title: error.title,
        detail: error.detail,
        extensions: error.extensions,
      },
      errors: [{ field, pointer: pointerTo(field), in: 'body', message: error.detail }],
    });
  }
}

/** A tachometer can outrun the clock a little, and engines run before and after the blocks (common practice, no source). */
const FASTEST = 1.25;
const SLACK_TENTHS = 5;

function requireNoJump(field: string, tenths: number, { departedAt, arrivedAt }: FlightFlownDto): void {
  const flownTenths = (toSeconds(arrivedAt) - toSeconds(departedAt)) / 360;
  if (tenths <= flownTenths * FASTEST + SLACK_TENTHS) return;
  throw new ProblemException('meter-jump', {
    field,
    detail: `That is ${(tenths / 10).toFixed(1)} h since departure, and the flight took ${(flownTenths / 10).toFixed(1)} h. Check the figure; if it is right, send it again with confirmJump set to true.`,
  });
}
