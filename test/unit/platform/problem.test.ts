// Goal: whatever is thrown becomes one answer with a stable code, which tells no more than it should.
import { NotFoundException, type ArgumentsHost } from '@nestjs/common';
import { z } from 'zod';
import {
  catalogueEntry,
  errorCatalogue,
  isErrorCode,
  type ErrorCode,
} from '../../../src/platform/error-catalogue';
import { createLog } from '../../../src/platform/log';
import { parseRequest, ZodPipe } from '../../../src/platform/parse-request';
import { asRequestError, problemOf } from '../../../src/platform/problem';
import { ProblemFilter, type PageAnswer } from '../../../src/platform/problem.filter';
import { RequestError } from '../../../src/platform/request-error';

const schema = z.object({ games: z.array(z.object({ date: z.string(), seats: z.number().int() })) });
const bad = { games: [{ date: '2026-03-01', seats: 2 }, { seats: 'hush' }] };

/** Lets the filter answer once and returns what left the house, and what was logged. */
function answerTo(thrown: unknown, url: string, page: PageAnswer = { kind: 'html', html: '<p>sorry</p>' }) {
  const lines: string[] = [];
  const log = createLog({ level: 'info', destination: { write: (line: string) => void lines.push(line) } });
  const sent = { status: 0, headers: {} as Record<string, string>, body: '' };
  const reply = {
    status: (code: number) => ((sent.status = code), reply),
    header: (name: string, value: string) => ((sent.headers[name] = value), reply),
    send: (body: string) => ((sent.body = body), reply),
  };
  const request = { id: 'req-12345678', method: 'GET', url };
  const host = {
    switchToHttp: () => ({ getRequest: () => request, getResponse: () => reply }),
  } as unknown as ArgumentsHost;
  new ProblemFilter({ publicUrl: () => 'https://crews.example', log, renderPage: () => page }).catch(
    thrown,
    host,
  );
  return { ...sent, log: lines.join('') };
}

test('codes are well formed, statuses are refusals, texts are sentences', () => {
  for (const code of Object.keys(errorCatalogue)) {
    expect(code).toMatch(/^[A-Z]+\.[A-Z]+(_[A-Z]+)*$/);
    if (!isErrorCode(code)) throw new Error(code);
    const { status, text, logLevel } = catalogueEntry(code);
    expect(status).toBeGreaterThanOrEqual(400);
    expect(status).toBeLessThan(600);
    expect(text).toMatch(/^[A-Z].*\.$/);
    expect(logLevel === 'error').toBe(status >= 500);
  }
  expect(isErrorCode('toString')).toBe(false);
});

test('faults of zod name every place, and no value', () => {
  for (const read of [() => parseRequest(schema, bad), () => new ZodPipe(schema).transform(bad)]) {
    let thrown: unknown;
    try {
      read();
    } catch (error) {
      thrown = error;
    }
    if (!(thrown instanceof RequestError)) throw new Error('No RequestError was thrown.');
    expect(thrown.code).toBe('REQUEST.INVALID');
    expect(thrown.status).toBe(422);
    expect(thrown.faults.map(({ path }) => path)).toEqual(['games[1].date', 'games[1].seats']);
    expect(JSON.stringify(thrown.faults)).not.toContain('hush');
  }
  expect(parseRequest(schema, { games: [] })).toEqual({ games: [] });
});

test.each<[string, unknown, ErrorCode]>([
  ['our own error', new RequestError('ACCESS.FORBIDDEN'), 'ACCESS.FORBIDDEN'],
  ['an error of Nest', new NotFoundException(), 'REQUEST.NOT_FOUND'],
  ['an error of Fastify', Object.assign(new Error('x'), { statusCode: 413 }), 'REQUEST.TOO_LARGE'],
  ['a fault of zod', new z.ZodError([]), 'REQUEST.INVALID'],
  ['a refused connection', Object.assign(new Error('x'), { code: 'ECONNREFUSED' }), 'SERVICE.UNAVAILABLE'],
  [
    'a server that stops',
    Object.assign(new Error('x'), { driverError: { code: '57P01' } }),
    'SERVICE.UNAVAILABLE',
  ],
  ['a bug', new TypeError('x is not a function'), 'SERVICE.FAULT'],
  ['a broken constraint', Object.assign(new Error('x'), { driverError: { code: '23505' } }), 'SERVICE.FAULT'],
  ['nothing', undefined, 'SERVICE.FAULT'],
])('%s becomes a code', (_, thrown, code) => {
  expect(asRequestError(thrown).code).toBe(code);
});

test('below /api the answer is problem details by RFC 9457', () => {
  const error = new RequestError('REQUEST.INVALID', {
    detail: 'Two games have the number 7.',
    faults: [{ path: 'games[3].number', message: 'is taken' }],
    headers: { 'retry-after': '5' },
  });
  const answer = answerTo(error, '/api/v1/games');
  expect(answer.status).toBe(422);
  expect(answer.headers).toEqual({
    'content-type': 'application/problem+json',
    'cache-control': 'no-store',
    'retry-after': '5',
  });
  expect(JSON.parse(answer.body)).toEqual({
    type: 'https://crews.example/problems/REQUEST.INVALID',
    title: errorCatalogue['REQUEST.INVALID'].text,
    status: 422,
    detail: 'Two games have the number 7.',
    code: 'REQUEST.INVALID',
    errors: [{ path: 'games[3].number', message: 'is taken' }],
    requestId: 'req-12345678',
  });
});

test('elsewhere it is a page, or the way to one', () => {
  expect(answerTo(new NotFoundException(), '/apiary')).toMatchObject({
    status: 404,
    headers: { 'content-type': 'text/html; charset=utf-8' },
    body: '<p>sorry</p>',
  });
  const away = answerTo(new RequestError('ACCESS.NOT_SIGNED_IN'), '/slates', {
    kind: 'redirect',
    to: '/sign-in',
  });
  expect(away.status).toBe(303);
  expect(away.headers['location']).toBe('/sign-in');
});

test('a bug is logged with its stack and answered without a word of it', () => {
  const answer = answerTo(new Error('select * from account where email = hush'), '/api/v1/slates');
  expect(answer.status).toBe(500);
  expect(answer.body).not.toContain('hush');
  const line = JSON.parse(answer.log) as { level: number; err: { stack: string }; requestId: string };
  expect(line).toMatchObject({ level: 50, requestId: 'req-12345678' });
  expect(line.err.stack).toContain('problem.test');
});

test('an everyday refusal is logged in one short line, its address without secrets', () => {
  const { log } = answerTo(
    new RequestError('ACCESS.LINK_INVALID'),
    '/sign-in/abcdefSECRET?token=abcdefSECRET',
  );
  expect(JSON.parse(log)).toMatchObject({ level: 30, code: 'ACCESS.LINK_INVALID' });
  expect(log).not.toContain('SECRET');
});

test('optional members are left out rather than empty', () => {
  expect(problemOf(new RequestError('REQUEST.NOT_FOUND'), { publicUrl: '' })).toEqual({
    type: '/problems/REQUEST.NOT_FOUND',
    title: errorCatalogue['REQUEST.NOT_FOUND'].text,
    status: 404,
    code: 'REQUEST.NOT_FOUND',
  });
});
