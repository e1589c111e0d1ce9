// Goal: no secret reaches the log, wherever it stands. Method: every way in, with one marker that must not come out.
import { createLog, redactText, requestId } from '../../../src/platform/log';

const marker = 'HUSH0123456789';

function logged(write: (log: ReturnType<typeof createLog>) => void): string {
  const lines: string[] = [];
  write(createLog({ level: 'trace', destination: { write: (line: string) => void lines.push(line) } }));
  expect(lines).toHaveLength(1);
  return lines.join('');
}

test.each<[string, (log: ReturnType<typeof createLog>) => void]>([
  ['a field', (log) => log.info({ password: marker }, 'x')],
  ['a field of a field', (log) => log.info({ body: { token: marker } }, 'x')],
  ['a field two levels down', (log) => log.info({ req: { headers: { 'set-cookie': marker } } }, 'x')],
  ['a header', (log) => log.info({ headers: { authorization: `Bearer ${marker}`, cookie: marker } }, 'x')],
  [
    'the address of a request',
    (log) => log.info({ req: { method: 'GET', url: `/feeds/${marker}.ics` } }, 'x'),
  ],
  ['an address in a field', (log) => log.info({ url: `/cal/${marker}.ics?x=1` }, 'x')],
  ['the message', (log) => log.info(`fetched https://crews.example/reply/${marker}`)],
  ['the message behind fields', (log) => log.warn({ a: 1 }, `GET /sign-in/${marker}`)],
  ['a parameter', (log) => log.info(`GET /x?token=${marker}&y=1`)],
  ['a password in an address', (log) => log.error(`cannot reach postgres://owner:${marker}@db/crews`)],
  [
    'the text of an error',
    (log) => log.error({ err: new Error(`connect postgres://owner:${marker}@db/crews`) }, 'x'),
  ],
  [
    'the parameters of a failed query',
    (log) =>
      log.error({ err: Object.assign(new Error('failed'), { parameters: [marker], query: 'q' }) }, 'x'),
  ],
])('a secret in %s stays out', (_, write) => {
  const line = logged(write);
  expect(line).not.toContain(marker);
  expect(() => JSON.parse(line) as unknown).not.toThrow();
});

test('what is harmless stays readable', () => {
  const line = logged((log) => log.info({ slateId: 's-1', url: '/slates/s-1?page=2' }, 'built in 3 s'));
  expect(JSON.parse(line)).toMatchObject({ slateId: 's-1', url: '/slates/s-1?page=2', msg: 'built in 3 s' });
  expect(redactText('postgres://owner@db/crews')).toBe('postgres://owner@db/crews');
});

test('the caller may name its request if the name is harmless', () => {
  expect(requestId('trace-0123.abc')).toBe('trace-0123.abc');
  for (const header of [
    undefined,
    '',
    'short',
    'a b c d e f',
    'x'.repeat(65),
    'new\nline-1234',
    ['a', 'b'],
  ]) {
    expect(requestId(header)).toMatch(/^[0-9a-f-]{36}$/);
  }
});
