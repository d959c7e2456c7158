import { additionalTrainingRule } from './additional-training.js';

/** 14 CFR 61.31(e): retractable gear, flaps and a controllable-pitch propeller; on floats, flaps and propeller. */
export const endorsementComplex = additionalTrainingRule({
  id: 'endorsement.additional_training.complex',
  title: 'Complex airplane endorsement',
  what: 'a complex airplane',
  citation: {
    text: '14 CFR 61.31(e)',
    status: 'seen',
    reading: 'A propeller set by an electronic engine and propeller control counts as controllable.',
  },
  kind: 'complex',
  grandfather: 'grandfather-complex',
  before: 'us.additional-training.complex-before',
  parameters: [],
  calls: (type) =>
    type.category === 'airplane' &&
    type.flaps &&
    type.controllablePropeller &&
    (type.retractableGear || type.class.endsWith('-sea')),
});
