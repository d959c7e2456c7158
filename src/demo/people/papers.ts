import { DEMO_CLUB_ID, demoId } from '../ids.js';
import type { When } from '../when.js';
import { additionalTraining, nearHome, solo } from './endorsements.js';
import { PaperFile, type PaperRows } from './paper-file.js';
import { medicalExamOn, type Person } from './person.js';
import type { Lesson } from './sign-offs.js';
import { isStudent } from './story.js';
import { flyableFrom, teacherFor } from './teachers.js';

/** Everybody's certificates, medicals, reviews and endorsements; and the lessons behind the newer ones. */
export function papers(people: readonly Person[], when: When): { rows: PaperRows; lessons: Lesson[] } {
  const rows: PaperRows = {
    certificates: [],
    certificate_ratings: [],
    instructor_certificates: [],
    medicals: [],
    basic_med: [],
    reviews: [],
    endorsements: [],
  };
  const lessons: Lesson[] = [];
  const officers = people.filter((one) => one.story.roles?.includes('safety-officer'));
  for (const person of people) {
    const verifier = officers.find((officer) => officer !== person)!;
    const file = new PaperFile(person, verifier, rows);
    certificate(file, when);
    medical(file, when);
    if (isStudent(person.story)) solo(file, people, lessons);
    else {
      review(file, people, when, lessons);
      additionalTraining(file, people);
      nearHome(file, people, when);
    }
  }
  return { rows, lessons };
}

function certificate(file: PaperFile, when: When): void {
  const { story } = file.person;
  const issuedOn = when.inMonth(story.certificateMonthsAgo, 19);
  const paper = file.paper('certificate', issuedOn);
  file.rows.certificates.push({
    ...paper,
    level: story.level,
    issued_on: issuedOn,
    valid_through: null,
    limitations: [],
  });
  const rating = (kind: 'category-class' | 'instrument', cls: string | null): void => {
    file.rows.certificate_ratings.push({
      club_id: DEMO_CLUB_ID,
      id: demoId(paper.id, kind, cls ?? ''),
      certificate_id: paper.id,
      kind,
      category: 'airplane',
      class: cls,
      type_designator: null,
    });
  };
  if (!isStudent(story)) rating('category-class', 'single-engine-land');
  if (story.multiEngine) rating('category-class', 'multi-engine-land');
  if (story.instrument) rating('instrument', null);
  if (story.instructor) {
    const teachesSince = when.inMonth(Math.max(story.certificateMonthsAgo - 18, 30), 7);
    const recent = when.inMonth(story.instructor.experienceMonthsAgo, 16);
    file.rows.instructor_certificates.push({
      ...file.paper('instructor-certificate', recent),
      issued_on: teachesSince,
      ratings: story.instructor.ratings,
      recent_experience_on: recent,
      printed_end_on: null,
    });
  }
}

function medical(file: PaperFile, when: When): void {
  const { story } = file.person;
  const examOn = medicalExamOn(file.person, when);
  if (examOn && story.medical) {
    file.rows.medicals.push({
      ...file.paper('medical', examOn, !story.medical.unverified),
      class: story.medical.class,
      exam_on: examOn,
      limitations: story.age >= 45 ? ['Must have glasses available for near vision'] : [],
      withdrawn_on: null,
    });
  }
  if (story.basicMed) {
    const courseOn = when.inMonth(story.basicMed.courseMonthsAgo, 9);
    file.rows.basic_med.push({
      ...file.paper('basic-med', courseOn),
      exam_on: when.inMonth(story.basicMed.examMonthsAgo, 21),
      course_on: courseOn,
      licence_valid_through: when.inMonth(-26, 20),
      held_medical_after_2006_07_14: true,
      last_application_denied: false,
      last_certificate_revoked_or_suspended: false,
    });
  }
}

function review(file: PaperFile, people: readonly Person[], when: When, lessons: Lesson[]): void {
  const { person } = file;
  const { reviewMonthsAgo } = person.story;
  if (reviewMonthsAgo === undefined) return;
  const day = when.inMonth(reviewMonthsAgo, 5 + (Number.parseInt(person.id.slice(0, 2), 16) % 20));
  const held = person.story.models
    .map(({ model }) => model)
    .filter((model) => person.checkedOut.get(model)! < day);
  const { on, models } = flyableFrom(held, day, when);
  file.rows.reviews.push({
    ...file.paper('review', on),
    kind: 'flight-review',
    reviewed_on: on,
    ground_tenths: 12,
    flight_tenths: 13,
    category: 'airplane',
    endorsed_as_review: false,
  });
  if (on >= when.firstDay && on >= person.joinedOn) {
    const teacher = teacherFor(people, person, models[0]!, on, 'review');
    lessons.push({ person, teacher, on, models, remarks: 'Flight review' });
  }
}
