/** A mail server on loopback that takes messages as they come, or is as unwilling as a spec wants it. */
import { simpleParser, type ParsedMail } from 'mailparser';
import type { AddressInfo } from 'node:net';
import { SMTPServer } from 'smtp-server';

/** What it does with the next messages. */
export type Mood = 'willing' | 'busy' | 'no such mailbox' | 'hangs up';

export interface MailServer {
  url: string;
  /** What was taken, in order. */
  taken: ParsedMail[];
  /** Addresses it was asked to take mail for, whatever came of it. */
  asked: string[];
  mood: Mood;
  stop(): Promise<void>;
}

const refusal = (responseCode: number, text: string): Error =>
  Object.assign(new Error(text), { responseCode });

export async function startMailServer(): Promise<MailServer> {
  const state: Pick<MailServer, 'taken' | 'asked' | 'mood'> = { taken: [], asked: [], mood: 'willing' };
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    onRcptTo({ address }, _session, done) {
      state.asked.push(address);
      // RFC 5321, section 4.2.3: 450 mailbox busy, 550 mailbox unavailable.
      if (state.mood === 'busy') return done(refusal(450, 'Mailbox busy'));
      if (state.mood === 'no such mailbox') return done(refusal(550, 'No such mailbox'));
      done();
    },
    onData(stream, session, done) {
      if (state.mood === 'hangs up') {
        const connections = (server as unknown as { connections: Set<{ _socket: { destroy(): void } }> })
          .connections;
        for (const { _socket } of connections) _socket.destroy();
        return;
      }
      void simpleParser(stream).then((mail) => {
        state.taken.push(mail);
        done();
      }, done);
    },
  });
  server.on('error', () => undefined);
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', () => done()));
  const { port } = server.server.address() as AddressInfo;
  return Object.assign(state, {
    url: `smtp://127.0.0.1:${port}`,
    stop: () => new Promise<void>((done) => server.close(() => done())),
  });
}
