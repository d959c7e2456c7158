export { ProblemException, pointerTo, type FieldError, type ProblemOptions } from './problem-exception.js';
export { allProblems, defineProblems, knownProblem, type ProblemKind } from './problem-catalogue.js';
export { type ProblemDocument } from './problem-document.js';
