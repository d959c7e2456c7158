/** Medical certificates (14 CFR 61.23) and BasicMed (61.113(i), part 68). */
import { ageOn, type CertificateLevel, type MedicalFact } from '../../../rules/index.js';
import { DURATION_PARAMETERS, medicalThrough } from '../../../rules/packs/us/pilot/medical/durations.js';
import { BASIC_MED, CERTIFICATE, MEDICAL } from '../../../rules/workshop/records.js';
import type { Mapping } from '../mapping.js';
import { Scene } from '../scene.js';
import { CATEGORY, USUAL_CLASS } from './words.js';

const CERTIFICATE_RULE = 'medical.certificate';
const BASICMED = 'medical.basicmed';

/** Privilege, as the certificate the pilot holds; carriage for hire exercises commercial privileges. */
const PRIVILEGE: Record<string, CertificateLevel> = {
  atp: 'atp',
  airline_transport: 'atp',
  commercial: 'commercial',
  private: 'private',
  recreational: 'recreational',
  student: 'student',
  instructor: 'commercial',
  flight_instructor: 'commercial',
  instructor_pic: 'commercial',
  flight_instructor_pic: 'commercial',
};

const certificate: Mapping = {
  rules: [CERTIFICATE_RULE],
  map(facts) {
    const asOf = facts.need('as_of', facts.date('as_of'));
    const scene = new Scene(asOf);
    const born = facts.need('birth_date', facts.date('birth_date'));
    const examOn = facts.need('exam_date', facts.date('exam_date'));
    const grade = facts.need('medical_class', facts.number('medical_class'));
    if (grade !== 1 && grade !== 2 && grade !== 3) throw facts.bad('medical_class', 'should be 1, 2 or 3');
    const privilege = facts.text('privilege');
    const level = facts.need('privilege', facts.choice('privilege', PRIVILEGE));
    const withdrawnOn =
      facts.oneOf(['withdrawn', 'withdrawn_on', 'suspended_on'], (key) => facts.date(key)) ?? null;
    // A deficiency the pilot knows of ends the certificate's use from that day (14 CFR 61.53).
    const unfit =
      facts.oneOf(['known_deficiency', 'known_medical_deficiency'], (key) => facts.flag(key)) ?? false;

    const medical: MedicalFact = {
      ...MEDICAL,
      class: grade,
      examOn,
      withdrawnOn: unfit ? asOf : withdrawnOn,
    };
    scene.set('member.birthDate', born);
    scene.set('member.medicals', [medical]);
    const ratings = level === 'student' ? [] : CERTIFICATE.ratings;
    scene.set('member.certificates', [{ ...CERTIFICATE, level, ratings }]);
    if (privilege === 'commercial') scene.passengers(1).flight({ forHire: true });

    const age = { age_at_exam: () => ageOn(born, examOn) };
    if (level !== 'atp') {
      const through = (): string | null => scene.lastValidDate(CERTIFICATE_RULE, [examOn]);
      return { ...age, valid: () => scene.allows(CERTIFICATE_RULE), valid_through: through };
    }
    // No club flight exercises airline transport privileges, so the rule's own arithmetic is asked.
    const through = (): string | null =>
      medicalThrough(medical, born, 'first', scene.parameters(DURATION_PARAMETERS));
    return {
      ...age,
      valid_through: through,
      valid: () => {
        const last = through();
        return last !== null && medical.withdrawnOn === null && examOn <= asOf && asOf <= last;
      },
    };
  },
};

const basicMed: Mapping = {
  rules: [BASICMED],
  map(facts) {
    const scene = new Scene(facts.need('as_of', facts.date('as_of')));
    const date = (...keys: string[]): string | undefined => facts.oneOf(keys, (key) => facts.date(key));
    const flag = (...keys: string[]): boolean | undefined => facts.oneOf(keys, (key) => facts.flag(key));
    const number = (...keys: string[]): number | undefined => facts.oneOf(keys, (key) => facts.number(key));
    const examOn = date('exam_date') ?? null;
    const courseOn = date('course_date') ?? null;
    const licensed = flag('valid_drivers_license', 'valid_drivers_licence') ?? true;
    const revoked = flag(
      'last_certificate_revoked_or_suspended',
      'last_certificate_revoked',
      'last_certificate_suspended',
      'last_certificate_suspended_revoked_or_withdrawn',
      'certificate_suspended_or_revoked',
      'medical_suspended_revoked_or_withdrawn',
    );
    // Whatever medical certificate there was no longer serves; the flight rests on BasicMed.
    scene.set('member.medicals', []);
    scene.set('member.basicMed', [
      {
        ...BASIC_MED,
        examOn,
        courseOn,
        heldMedicalAfter20060714: flag('medical_held_after_2006_07_14') ?? true,
        lastApplicationDenied: flag('last_application_denied') ?? false,
        licenceValidThrough: licensed ? '2099-12-31' : '2000-01-01',
        lastCertificateRevokedOrSuspended: revoked ?? false,
      },
    ]);
    const occupants = number('occupant_seats', 'occupants', 'seats');
    const category = facts.choice('category', CATEGORY);
    scene.aircraft({
      occupantsCertificated: occupants,
      seats: occupants,
      maxTakeoffLb: number('max_takeoff_lb'),
      category,
      class: category && USUAL_CLASS[category],
      transportCategory: flag('transport_category', 'transport_category_rotorcraft'),
    });
    scene.passengers(number('passengers') ?? 0);
    scene.flight({
      forHire: flag('compensation', 'compensation_or_hire', 'for_hire') ?? false,
      maxAltitudeFtMsl: number('altitude_ft_msl', 'altitude_msl') ?? scene.sheet.flight.maxAltitudeFtMsl,
      maxSpeedKias: number('speed_kias') ?? scene.sheet.flight.maxSpeedKias,
    });
    // The rule leaves staying in the country to the pilot.
    facts.remark('in_us', true);
    facts.remark('within_us', true);
    return {
      // Not applicable means that BasicMed was never taken up: then it serves nothing.
      valid: () => {
        const { status, says } = scene.finding(BASICMED);
        return status === 'unknown' || status === 'error' ? `${status}: ${says}` : status === 'met';
      },
      valid_through: () => scene.lastValidDate(BASICMED, [examOn ?? undefined, courseOn ?? undefined]),
    };
  },
};

export const MEDICAL_MAPS: readonly Mapping[] = [certificate, basicMed];
