/** Which directives apply to an aircraft, as far as records tell. What they do not tell applies until somebody has looked it up. */
import type { EquipmentKind } from '../../rules/index.js';
import type { Directive } from './directive.entity.js';
import { withinSerials } from './serials.js';

/** What is known of an aircraft. */
export interface DirectiveAircraft {
  modelId: string;
  serialNumber: string | null;
  pieces: readonly {
    id: string;
    kind: EquipmentKind;
    name: string;
    partNumber: string | null;
    serialNumber: string | null;
  }[];
}

/** Whether a directive applies to the aircraft, or to one piece in it. */
export interface Applicability {
  /** Null: the aircraft itself. */
  equipmentId: string | null;
  state: 'applies' | 'unclear' | 'not';
  because: string;
}

type Text = Pick<Directive, 'appliesTo' | 'equipmentKind' | 'partNumbers' | 'serials'> & {
  modelIds: readonly string[];
};

/**
 * One entry for a directive about the aircraft, one for each piece of the kind for one about equipment; none for another model or
 * without such a piece.
 */
export function applicabilityOf(directive: Text, aircraft: DirectiveAircraft): Applicability[] {
  const { modelIds, appliesTo, equipmentKind } = directive;
  const named = modelIds.length === 0 || modelIds.includes(aircraft.modelId);
  if (!named) return [];
  if (appliesTo === 'aircraft') return [bySerial(directive, null, aircraft.serialNumber, 'the aircraft')];
  return aircraft.pieces
    .filter(({ kind }) => kind === equipmentKind)
    .map((piece) => {
      const part = byPart(directive, piece);
      return part ?? bySerial(directive, piece.id, piece.serialNumber, `“${piece.name}”`);
    });
}

function byPart(
  { partNumbers }: Text,
  { id, name, partNumber }: DirectiveAircraft['pieces'][number],
): Applicability | null {
  if (partNumbers.length === 0) return null;
  if (partNumber === null)
    return { equipmentId: id, state: 'unclear', because: `The part number of “${name}” is not on record.` };
  const plain = (text: string): string => text.replace(/[\s-]/g, '').toUpperCase();
  if (partNumbers.some((one) => plain(one) === plain(partNumber))) return null;
  return { equipmentId: id, state: 'not', because: `Part number ${partNumber} is not among those named.` };
}

function bySerial(
  { serials }: Text,
  equipmentId: string | null,
  serialNumber: string | null,
  of: string,
): Applicability {
  if (serials.length === 0) return { equipmentId, state: 'applies', because: 'Every serial number.' };
  if (serialNumber === null)
    return { equipmentId, state: 'unclear', because: `The serial number of ${of} is not on record.` };
  const within = withinSerials(serialNumber, serials);
  if (within === 'in')
    return { equipmentId, state: 'applies', because: `Serial number ${serialNumber} is among those named.` };
  if (within === 'out')
    return { equipmentId, state: 'not', because: `Serial number ${serialNumber} is not among those named.` };
  return {
    equipmentId,
    state: 'unclear',
    because: `Serial number ${serialNumber} is written in another form than those named.`,
  };
}
