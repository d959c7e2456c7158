/**
 * Whether a directive applies: 14 CFR 39.3, 39.5, 39.15, 39.17 (from memory). It applies to each product it names, changed or not;
 * where the records do not tell, it counts until somebody has looked.
 */
import { applicabilityOf, type DirectiveAircraft } from '../../src/fleet/directives/applicability.js';

const LARK: DirectiveAircraft = {
  ...{ modelId: 'lark', serialNumber: 'HL-1042' },
  pieces: [
    { id: 'elt', kind: 'elt', name: 'ELT 406', partNumber: 'E-406 01', serialNumber: '77' },
    { id: 'spare', kind: 'elt', name: 'Old ELT', partNumber: null, serialNumber: null },
    { id: 'clock', kind: 'clock', name: 'Clock', partNumber: null, serialNumber: null },
  ],
};
const OF_AIRCRAFT = {
  ...{ appliesTo: 'aircraft' as const, equipmentKind: null, partNumbers: [], modelIds: ['lark'] },
  serials: [{ from: 'HL-1001', through: 'HL-1100' }],
};
const OF_ELT = {
  ...{
    appliesTo: 'equipment' as const,
    equipmentKind: 'elt' as const,
    partNumbers: ['E40601'],
    modelIds: [],
  },
  serials: [],
};
const states = (all: ReturnType<typeof applicabilityOf>) =>
  all.map(({ equipmentId, state }) => `${equipmentId ?? 'aircraft'} ${state}`);

it.each([
  ['named by serial number', {}, {}, ['aircraft applies']],
  ['another serial number', { serialNumber: 'HL-1101' }, {}, ['aircraft not']],
  ['a serial number of another form', { serialNumber: 'HQ-1' }, {}, ['aircraft unclear']],
  ['no serial number on record', { serialNumber: null }, {}, ['aircraft unclear']],
  [
    'no serial number on record, and every one named',
    { serialNumber: null },
    { serials: [] },
    ['aircraft applies'],
  ],
  ['another model', { modelId: 'heron' }, {}, []],
  ['another model without a serial number', { modelId: 'heron', serialNumber: null }, {}, []],
  ['every model', { modelId: 'heron' }, { modelIds: [] }, ['aircraft applies']],
])('an aircraft: %s', (_name, aircraft, directive, expected) => {
  expect(states(applicabilityOf({ ...OF_AIRCRAFT, ...directive }, { ...LARK, ...aircraft }))).toEqual(
    expected,
  );
});

it.each([
  ['by part number, however it is spaced', {}, {}, ['elt applies', 'spare unclear']],
  ['another part number', {}, { partNumbers: ['E-121'] }, ['elt not', 'spare unclear']],
  ['any part number', {}, { partNumbers: [] }, ['elt applies', 'spare applies']],
  ['by serial number', {}, { serials: [{ from: '1', through: '80' }] }, ['elt applies', 'spare unclear']],
  ['another serial number', {}, { serials: [{ from: '1', through: '76' }] }, ['elt not', 'spare unclear']],
  ['in a model it does not name', {}, { modelIds: ['heron'] }, []],
  ['no such piece', { pieces: [] }, {}, []],
])('equipment: %s', (_name, aircraft, directive, expected) => {
  expect(states(applicabilityOf({ ...OF_ELT, ...directive }, { ...LARK, ...aircraft }))).toEqual(expected);
});

it('says why, of the piece it is about', () => {
  const says = applicabilityOf({ ...OF_ELT, serials: [{ from: '1', through: '76' }] }, LARK).map(
    ({ because }) => because,
  );
  expect(says).toEqual([
    'Serial number 77 is not among those named.',
    'The part number of “Old ELT” is not on record.',
  ]);
});
