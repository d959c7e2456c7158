import { additionalTrainingRule } from './additional-training.js';

/** 14 CFR 61.31(i): a one-time endorsement, apart from the full-stop landings of 61.57(a). */
export const endorsementTailwheel = additionalTrainingRule({
  id: 'endorsement.additional_training.tailwheel',
  title: 'Tailwheel endorsement',
  what: 'a tailwheel airplane',
  citation: { text: '14 CFR 61.31(i)', status: 'seen' },
  kind: 'tailwheel',
  grandfather: 'grandfather-tailwheel',
  before: 'us.additional-training.tailwheel-before',
  parameters: [],
  calls: (type) => type.category === 'airplane' && type.tailwheel,
});
