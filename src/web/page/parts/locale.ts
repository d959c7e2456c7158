/** The reader's English: dates follow the browser where it speaks English, and are British elsewhere. */
export const LOCALE = navigator.language.toLowerCase().startsWith('en') ? navigator.language : 'en-GB';
