import { RequestLimit } from '../../../src/access/request-limit';
import { deviceLabel } from '../../../src/access/device-label';
import { FixedClock } from '../../../src/platform/clock';

// Goal: a caller is held to a number of requests a window, alone and not for ever; labels for people are honest guesses.
test('the request after the last allowed one is refused until the window is over, for that caller only', () => {
  const clock = new FixedClock('2026-11-20T12:00:00Z');
  const limit = new RequestLimit(clock, { max: 3, windowMinutes: 15 });
  for (let n = 0; n < 3; n += 1) limit.count('a');
  clock.advanceMinutes(5);
  expect(() => limit.count('a')).toThrow(
    expect.objectContaining({ code: 'REQUEST.TOO_MANY', headers: { 'retry-after': '600' } }) as Error,
  );
  expect(() => limit.count('b')).not.toThrow();
  clock.advanceMinutes(10);
  expect(() => limit.count('a')).not.toThrow();
});

test.each([
  ['Mozilla/5.0 (Android 14; Mobile; rv:130.0) Gecko/130.0 Firefox/130.0', 'Firefox on Android'],
  [
    'Mozilla/5.0 (iPhone; CPU iPhone OS 17_0 like Mac OS X) AppleWebKit/605 Version/17.0 Mobile Safari/604.1',
    'Safari on iPhone',
  ],
  [
    'Mozilla/5.0 (Windows NT 10.0) AppleWebKit/537.36 Chrome/120.0 Safari/537.36 Edg/120.0',
    'Edge on Windows',
  ],
  ['curl/8.0', 'Another program'],
  [undefined, 'Another program'],
])('%s is listed as %s', (agent, label) => {
  expect(deviceLabel(agent)).toBe(label);
});
