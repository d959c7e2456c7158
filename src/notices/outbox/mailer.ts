import { Injectable, type OnApplicationShutdown } from '@nestjs/common';
import { createTransport, type Transporter } from 'nodemailer';
import { AppConfig } from '../../platform/config.js';
import type { Message } from './compose.js';

/** What came of handing a message to the mail server. */
export type Handed =
  | { outcome: 'sent' }
  /** Worth trying again: the server is away, busy, or does not let us in as it is set up. */
  | { outcome: 'later'; fault: string }
  /** The server will never take it. */
  | { outcome: 'refused'; fault: string };

const PATIENCE = { connectionTimeout: 10_000, greetingTimeout: 10_000, socketTimeout: 20_000 };

/** Hands messages to the mail server of the settings. */
@Injectable()
export class Mailer implements OnApplicationShutdown {
  private readonly transport: Transporter | null;

  constructor(private readonly config: AppConfig) {
    this.transport =
      config.smtpUrl === undefined
        ? null
        : createTransport({ url: config.smtpUrl, ...PATIENCE }, { from: config.mailFrom });
  }

  /** Whether there is a mail server at all; without one, notices stand on the page only. */
  get configured(): boolean {
    return this.transport !== null;
  }

  onApplicationShutdown(): void {
    this.transport?.close();
  }

  /**
   * @param id the same for every attempt, so that a message that comes twice is known as one (RFC 5322, Message-ID).
   * @param to `unsubscribeUrl` turns what it tells of off with one request (RFC 8058), null: nothing does.
   */
  async hand(
    id: string,
    { unsubscribeUrl, ...to }: { name: string; address: string; unsubscribeUrl: string | null },
    message: Message,
  ): Promise<Handed> {
    if (this.transport === null) return { outcome: 'later', fault: 'No mail server is set up.' };
    try {
      await this.transport.sendMail({
        to,
        messageId: `<${id}@${new URL(this.config.publicUrl).hostname}>`,
        ...{ subject: message.subject, text: message.text, html: message.html },
        headers: {
          // RFC 2369 and, where one request does it, RFC 8058.
          'List-Unsubscribe': `<${unsubscribeUrl ?? message.preferencesUrl}>`,
          ...(unsubscribeUrl === null ? {} : { 'List-Unsubscribe-Post': 'List-Unsubscribe=One-Click' }),
          // Nobody's "out of office" is wanted (RFC 3834).
          'Auto-Submitted': 'auto-generated',
        },
        disableFileAccess: true,
        disableUrlAccess: true,
      });
      return { outcome: 'sent' };
    } catch (error) {
      return faultOf(error as SmtpError);
    }
  }
}

interface SmtpError extends Error {
  code?: string;
  responseCode?: number;
  command?: string;
}

/** Replies from 500 on are for good (RFC 5321, section 4.2.1), but for one that only says that the settings are wrong. */
export function faultOf({ message, code, responseCode, command }: SmtpError): Handed {
  const fault = `${message}`.replace(/\s+/g, ' ').slice(0, 400);
  const ofSettings = code === 'EAUTH' || /^(AUTH|EHLO|HELO|STARTTLS)/.test(command ?? '');
  const forGood = responseCode !== undefined && responseCode >= 500 && !ofSettings;
  return { outcome: forGood ? 'refused' : 'later', fault };
}
