import { simpleParser, type ParsedMail } from 'mailparser';
import type { AddressInfo } from 'node:net';
import { SMTPServer } from 'smtp-server';

/** A mail server that keeps what it takes, and refuses on request. */
export interface MailCatcher {
  readonly url: string;
  readonly taken: readonly ParsedMail[];
  /** Answers the next messages with these SMTP replies instead of taking them; afterwards it takes again. */
  refuseNext(...codes: number[]): void;
  /** Called after each message is complete and before the server says yes. */
  onTaken: () => Promise<void>;
  close(): Promise<void>;
}

export async function mailCatcher(): Promise<MailCatcher> {
  const taken: ParsedMail[] = [];
  const refusals: number[] = [];
  const catcher = { onTaken: async () => undefined as void };
  const server = new SMTPServer({
    disabledCommands: ['AUTH', 'STARTTLS'],
    logger: false,
    onRcptTo(_address, _session, done) {
      const code = refusals.shift();
      if (code === undefined) return done();
      done(
        Object.assign(new Error(code >= 500 ? 'no such mailbox' : 'try again later'), { responseCode: code }),
      );
    },
    onData(stream, _session, done) {
      simpleParser(stream)
        .then(async (mail) => {
          taken.push(mail);
          await catcher.onTaken();
        })
        .then(
          () => done(),
          (error: unknown) => done(error as Error),
        );
    },
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.server.address() as AddressInfo;
  return Object.assign(catcher, {
    url: `smtp://127.0.0.1:${port}`,
    taken,
    refuseNext: (...codes: number[]) => void refusals.push(...codes),
    close: () => new Promise<void>((resolve) => server.close(() => resolve())),
  });
}
