/** Explanations for people: the rule book, the derivation of a finding, and all the words they are made of. */
export * from './words.js';
export * from './sentences.js';
export * from './fact-words.js';
export * from './parameter-words.js';
export * from './catalogue.js';
export * from './facts-read.js';
export * from './numbers-read.js';
export * from './sun-seen.js';
export * from './derivation.js';
export * from './decision.js';
