/** A message from notices: plain text, and the same as simple HTML. Pure. */
import { CAUTION } from '../../rules/index.js';
import type { NoticeItem } from './items.js';
import { headingOf } from './kinds.js';
import { datesInWords } from './words.js';

/** A notice as it goes into a message. */
export interface ToldNotice {
  kind: string;
  items: readonly NoticeItem[];
}

export interface MessageParts {
  club: { name: string; zone: string };
  name: string;
  notices: readonly ToldNotice[];
  publicUrl: string;
}

export interface Message {
  subject: string;
  text: string;
  html: string;
  /** Where what one wants of mail is set. */
  preferencesUrl: string;
}

/** Where a person says which notices come by mail. */
export const preferencesPage = (publicUrl: string): string => `${publicUrl}/notices#mail`;

/** Items told in one message; the rest stand on the page. */
const MOST_ITEMS = 30;

export function compose({ club, name, notices, publicUrl }: MessageParts): Message {
  const said = (text: string): string => datesInWords(text, club.zone);
  const preferencesUrl = preferencesPage(publicUrl);
  const headings = notices.map(({ kind, items }) => headingOf(kind, items.length));
  const subject = `${club.name}: ${headings.length === 1 ? headings[0]! : `${headings.length} notices`}`;
  const why =
    'You get this as a member of the club. Which notices come by mail, and when, is yours to say: ' +
    preferencesUrl;
  const text: string[] = [`Dear ${name},`, ''];
  const html: string[] = [`<p>Dear ${escaped(name)},</p>`];
  for (const [index, { items }] of notices.entries()) {
    text.push(headings[index]!, '-'.repeat(headings[index]!.length), '');
    html.push(`<h2>${escaped(headings[index]!)}</h2>`);
    for (const item of items.slice(0, MOST_ITEMS)) {
      const lines = item.says.map(said);
      const ways = (item.ways ?? []).map(said);
      const url = publicUrl + item.link;
      text.push(said(item.title), ...lines.map((line) => `  ${line}`));
      if (ways.length > 0) text.push('  What would make it a yes:', ...ways.map((line) => `  - ${line}`));
      text.push(`  ${url}`, '');
      html.push(
        `<h3>${escaped(said(item.title))}</h3>`,
        ...lines.map((line) => `<p>${escaped(line)}</p>`),
        ...(ways.length > 0
          ? [
              `<p>What would make it a yes:</p><ul>${ways.map((line) => `<li>${escaped(line)}</li>`).join('')}</ul>`,
            ]
          : []),
        `<p><a href="${escaped(url)}">Look at it</a></p>`,
      );
    }
    if (items.length > MOST_ITEMS) {
      const rest = `And ${items.length - MOST_ITEMS} more, on the page.`;
      text.push(rest, '');
      html.push(`<p>${rest}</p>`);
    }
  }
  text.push(CAUTION, '', why, '');
  html.push(
    `<p>${escaped(CAUTION)}</p>`,
    `<p>You get this as a member of the club. <a href="${escaped(preferencesUrl)}">Say which notices come by mail, and when</a>.</p>`,
  );
  return { subject: oneLine(subject), text: text.join('\n'), html: html.join('\n'), preferencesUrl };
}

const oneLine = (text: string): string => text.replace(/\s+/g, ' ').slice(0, 200);
const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
