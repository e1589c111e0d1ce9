import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { randomUUID } from 'node:crypto';
import { Writable } from 'node:stream';
import { Account } from '../../../src/access/account.entity';
import { Membership } from '../../../src/access/membership.entity';
import type { Role } from '../../../src/access/role';
import { sessionCookie } from '../../../src/access/session-cookie';
import { Sessions } from '../../../src/access/sessions';
import type { SignInMessage } from '../../../src/access/sign-in-mailer';
import { SignIn } from '../../../src/access/sign-in';
import { createHttpApp } from '../../../src/http-app';
import { FixedClock } from '../../../src/platform/clock';
import { readHealth } from '../../../src/platform/health';
import { Jobs } from '../../../src/platform/jobs';
import { createLog } from '../../../src/platform/log';
import { newToken } from '../../../src/platform/random';
import { schemaPlan } from '../../../src/cli/schema-plan';
import { ServiceAddress } from '../../../src/web/http/service-address';
import { testDatabase, type TestDatabase } from '../database/test-database';
import { Browser } from './browser';

/** The whole HTTP side on a database of its own, with a clock that stands still and a mailbox to look into. */
export interface TestService {
  readonly app: NestFastifyApplication;
  readonly database: TestDatabase;
  readonly clock: FixedClock;
  readonly jobs: Jobs;
  readonly mailbox: SignInMessage[];
  /** Everything that was logged. */
  readonly logged: () => string;
  browser(): Browser;
  /** Adds an account to an association and signs it in. */
  signedIn(member: NewMember): Promise<Browser>;
  /** Waits until the mail that was asked for is sent. */
  mailSettled(): Promise<void>;
  close(): Promise<void>;
}

export interface NewMember {
  readonly associationId: string;
  readonly roles: readonly Role[];
  readonly officialId?: string;
  readonly name?: string;
}

export async function testService(now = '2026-11-20T12:00:00Z'): Promise<TestService> {
  const database = await testDatabase();
  const clock = new FixedClock(now);
  let logged = '';
  const destination = new Writable({
    write(chunk, _encoding, done) {
      logged += String(chunk);
      done();
    },
  });
  const log = createLog({ level: 'trace', destination });
  const jobs = await Jobs.start(database.dataSource, log);
  const mailbox: SignInMessage[] = [];
  const app = await createHttpApp({
    tenancy: database.tenancy,
    jobs,
    dataSource: database.dataSource,
    clock,
    newToken,
    log,
    address: new ServiceAddress('http://localhost'),
    formSecret: 'only for tests, but long enough to be a secret',
    signInMailer: {
      send: async (message) => {
        mailbox.push(message);
      },
    },
    version: '0.0.0-test',
    readHealth: () =>
      readHealth(database.dataSource, { plan: schemaPlan, zones: ['Europe/London'], now: clock.now() }),
  });
  return {
    app,
    database,
    clock,
    jobs,
    mailbox,
    logged: () => logged,
    browser: () => new Browser(app),
    signedIn: async (member) => {
      const accountId = await addMember(database, member);
      const browser = new Browser(app);
      browser.setCookie(sessionCookie, await app.get(Sessions).openFor(accountId, 'Test'));
      return browser;
    },
    mailSettled: () => app.get(SignIn).settled(),
    close: async () => {
      await app.close();
      await jobs.stop();
      await database.close();
    },
  };
}

/** @returns the account's id; its address is `NAME@members.example` */
export async function addMember(database: TestDatabase, member: NewMember): Promise<string> {
  const { associationId } = member;
  const accountId = randomUUID();
  const name = member.name ?? `Member ${accountId.slice(0, 8)}`;
  const email = `${name.toLowerCase().replace(/\W+/g, '.')}@members.example`;
  await database.tenancy.runWith({ associationId, accountId }, async (tx) => {
    await tx.insert(Account, {
      id: accountId,
      email,
      displayName: name,
      createdAt: new Date(),
      disabledAt: null,
    });
    await tx.insert(Membership, {
      associationId,
      accountId,
      roles: [...member.roles],
      officialId: member.officialId ?? null,
      createdAt: new Date(),
    });
  });
  return accountId;
}
