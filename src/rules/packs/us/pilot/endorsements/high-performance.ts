import { additionalTrainingRule } from './additional-training.js';

/** 14 CFR 61.31(f): an engine of more than 200 horsepower; engines are not added up, and 200 is not more. */
export const endorsementHighPerformance = additionalTrainingRule({
  id: 'endorsement.additional_training.high_performance',
  title: 'High-performance airplane endorsement',
  what: 'a high-performance airplane',
  citation: { text: '14 CFR 61.31(f)', status: 'seen' },
  kind: 'high-performance',
  grandfather: 'grandfather-high-performance',
  before: 'us.additional-training.high-performance-before',
  parameters: ['us.additional-training.power-hp'],
  calls: (type, p) => {
    if (type.category !== 'airplane') return false;
    if (type.powerPerEngineHp === null) return { missing: 'the power of its engine is not on record' };
    return type.powerPerEngineHp > p.number('us.additional-training.power-hp');
  },
});
