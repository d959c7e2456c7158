export * from './suggest.js';
export * from './words.js';
