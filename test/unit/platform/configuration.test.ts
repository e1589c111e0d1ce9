// Goal: one frozen object out of the environment, every fault named at once, and no value ever repeated.
import { resolve } from 'node:path';
import { ConfigurationError, readConfiguration } from '../../../src/platform/configuration';

test('an empty environment gives the defaults', () => {
  expect(readConfiguration({})).toEqual({
    nodeEnv: 'development',
    databaseUrl: null,
    appDatabaseUrl: null,
    host: '127.0.0.1',
    port: 8080,
    portIsExplicit: false,
    publicUrl: null,
    dataDirectory: resolve('.crewloom'),
    logLevel: 'info',
    smtpUrl: null,
    sessionSecret: null,
  });
});

test('an empty variable counts as absent, and strangers are ignored', () => {
  expect(readConfiguration({ PORT: '', DATABASE_URL: '', PATH: '/usr/bin' })).toEqual(readConfiguration({}));
});

test('what is given is read, and the object is frozen', () => {
  const configuration = readConfiguration({
    NODE_ENV: 'production',
    DATABASE_URL: 'postgresql://owner:pw@db.example:6432/crews?sslmode=require',
    APP_DATABASE_URL: 'postgres://app:pw@db.example/crews',
    PORT: '0',
    PUBLIC_URL: 'https://crews.example.org/base//',
    DATA_DIR: '/var/lib/crews',
    LOG_LEVEL: 'warn',
    SMTP_URL: 'smtps://mail.example:465',
    SESSION_SECRET: 's'.repeat(32),
  });
  expect(configuration).toMatchObject({
    nodeEnv: 'production',
    port: 0,
    portIsExplicit: true,
    publicUrl: 'https://crews.example.org/base',
    dataDirectory: '/var/lib/crews',
  });
  expect(Object.isFrozen(configuration)).toBe(true);
});

test('every fault is listed by its variable, without its value', () => {
  const secrets = {
    NODE_ENV: 'hush-a',
    DATABASE_URL: 'mysql://hush-b',
    APP_DATABASE_URL: 'hush-c',
    PORT: '99999',
    PUBLIC_URL: 'hush-d',
    LOG_LEVEL: 'hush-e',
    SMTP_URL: 'http://hush-f',
    SESSION_SECRET: 'hush-g',
  };
  let thrown: unknown;
  try {
    readConfiguration(secrets);
  } catch (error) {
    thrown = error;
  }
  if (!(thrown instanceof ConfigurationError)) throw new Error('No ConfigurationError was thrown.');
  expect(thrown.faults.map(({ variable }) => variable).sort()).toEqual(Object.keys(secrets).sort());
  expect(thrown.message).not.toMatch(/hush|99999|mysql/);
});

test.each(['-1', '65536', '80.5', '0x50', ' 80', 'http'])('PORT=%j is refused', (PORT) => {
  expect(() => readConfiguration({ PORT })).toThrow('PORT: must be a whole number from 0 to 65535');
});

test('a login for the application role needs the owner beside it', () => {
  expect(() => readConfiguration({ APP_DATABASE_URL: 'postgres://app@localhost/crews' })).toThrow(
    'APP_DATABASE_URL: needs DATABASE_URL beside it',
  );
});
