import { documentsRule } from '../../common/people/documents.js';

/** Part-FCL, FCL.045. */
export const documents = documentsRule({
  id: 'document.easa.carry',
  citation: { text: 'Regulation (EU) No 1178/2011, FCL.045(a), (b), (d)', status: 'seen' },
  condition:
    'Carry the licence (a student: the instructor’s authorisation), the medical certificate and a personal identification document with a photo.',
});
