import { Checkout, CheckoutVoid } from './checkout.entity.js';
import { QuizQuestion } from './quiz/question.entity.js';
import { CheckoutRequirement, CheckoutVersion, SyllabusItem } from './requirements/requirement.entity.js';
import { CheckoutMark } from './syllabus/mark.entity.js';

/** Entities of this folder, for the data source. */
export const CHECKOUT_ENTITIES = [
  ...[Checkout, CheckoutVoid, CheckoutRequirement, CheckoutVersion, SyllabusItem, CheckoutMark],
  QuizQuestion,
];
