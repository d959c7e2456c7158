/** The message of a rule: text with expressions in braces. */
import { readExpression, type Expression } from './expression.js';
import { placeIn, within, type Fault } from './fault.js';
import { MOST } from './meter.js';

/** A message cut at its braces. */
export type MessagePart = { text: string } | { expression: Expression };

export type ReadMessage = { parts: MessagePart[]; faults: null } | { parts: null; faults: Fault[] };

/** Types that can be written into a sentence. */
const WRITABLE = ['string', 'int', 'double', 'Days'];

/** Reads a message; each `{expression}` gives a text or a number. */
export function readMessage(message: string): ReadMessage {
  const parts: MessagePart[] = [];
  const faults: Fault[] = [];
  const refuse = (code: string, says: string, start: number, end: number): void => {
    faults.push({ code, message: says, ...placeIn(message, start, end) });
  };
  if (message.trim() === '') refuse('empty', 'Say what a member reads when the rule is not met.', 0, 1);
  if (message.length > MOST.message)
    refuse('too-long', `A message has at most ${MOST.message} characters.`, MOST.message, message.length);
  let at = 0;
  while (at < message.length && faults.length === 0) {
    const open = message.indexOf('{', at);
    const text = message.slice(at, open === -1 ? undefined : open);
    const stray = text.indexOf('}');
    if (stray !== -1)
      refuse(
        'brace',
        "This brace closes nothing. Write '{' before the expression.",
        at + stray,
        at + stray + 1,
      );
    if (text !== '') parts.push({ text });
    if (open === -1) break;
    const close = closing(message, open + 1);
    if (close === -1) {
      refuse('brace', "This brace is not closed. Write '}' after the expression.", open, open + 1);
      break;
    }
    const read = readExpression(message.slice(open + 1, close), WRITABLE);
    if (read.faults) faults.push(...read.faults.map((fault) => within(fault, message, open + 1)));
    else parts.push({ expression: read.expression });
    at = close + 1;
  }
  if (parts.filter((part) => 'expression' in part).length > MOST.slots)
    refuse('too-many-expressions', `A message holds at most ${MOST.slots} expressions.`, 0, message.length);
  return faults.length > 0 ? { parts: null, faults } : { parts, faults: null };
}

/** The brace that ends an expression; braces inside its texts do not. -1: none. */
function closing(message: string, from: number): number {
  let quote: string | null = null;
  for (let at = from; at < message.length; at += 1) {
    const character = message[at]!;
    if (quote !== null) {
      if (character === '\\') at += 1;
      else if (character === quote) quote = null;
    } else if (character === '"' || character === "'") quote = character;
    else if (character === '}') return at;
  }
  return -1;
}

/** The expressions of a message. */
export const expressionsIn = (parts: readonly MessagePart[]): Expression[] =>
  parts.flatMap((part) => ('expression' in part ? [part.expression] : []));

/** Numbers with at most two places after the point. */
export const inWords = (value: unknown): string =>
  typeof value === 'number' ? String(Number(value.toFixed(2))) : String(value);
