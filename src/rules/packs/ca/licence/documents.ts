import { documentsRule } from '../../common/people/documents.js';

/** CARs 401.03(1)(d): the pilot can produce permit or licence and medical certificate. */
export const documents = documentsRule({
  id: 'document.canada.carry',
  citation: { text: 'CARs 401.03(1)(d)', status: 'seen' },
  condition: 'Carry the aviation document booklet with the permit or licence and the medical certificate.',
});
