import { additionalTrainingRule } from './additional-training.js';

/** 14 CFR 61.31(g): pressurised, and the lower of service ceiling and maximum operating altitude above 25,000 ft. */
export const endorsementHighAltitude = additionalTrainingRule({
  id: 'endorsement.additional_training.high_altitude',
  title: 'High-altitude endorsement',
  what: 'a pressurised high-altitude aircraft',
  citation: { text: '14 CFR 61.31(g)', status: 'seen' },
  kind: 'high-altitude',
  grandfather: 'grandfather-high-altitude',
  before: 'us.additional-training.high-altitude-before',
  parameters: ['us.additional-training.altitude-ft'],
  calls: (type, p) => {
    if (!type.pressurised) return false;
    const limit = p.number('us.additional-training.altitude-ft');
    const { serviceCeilingFt, maxOperatingAltitudeFt } = type;
    // The lower governs, so one that is known to be low enough settles it.
    if (serviceCeilingFt !== null && serviceCeilingFt <= limit) return false;
    if (maxOperatingAltitudeFt !== null && maxOperatingAltitudeFt <= limit) return false;
    if (serviceCeilingFt === null || maxOperatingAltitudeFt === null)
      return { missing: 'its service ceiling and maximum operating altitude are not both on record' };
    return true;
  },
});
