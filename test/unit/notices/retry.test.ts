import { attemptsMax, isFinalRefusal, nextTry } from '../../../src/notices/retry';

// Goal: tries come later and later, within bounds, and only a refusal of the message itself ends them at once.
const now = new Date('2026-11-20T12:00:00Z');
const minutesUntil = (attempts: number) => (nextTry(now, attempts).getTime() - now.getTime()) / 60_000;

it('waits 1, 2, 4 … minutes, at most 4 hours, and gives up within two days', () => {
  const waits = Array.from({ length: attemptsMax - 1 }, (_, index) => minutesUntil(index + 1));
  expect(waits).toEqual([1, 2, 4, 8, 16, 32, 64, 128, 240, 240, 240]);
  expect(waits.reduce((sum, wait) => sum + wait, 0)).toBeLessThan(2 * 24 * 60);
});

it.each([
  [{ code: 'EENVELOPE', responseCode: 550 }, true],
  [{ code: 'EMESSAGE', responseCode: 554 }, true],
  [{ code: 'EENVELOPE', responseCode: 451 }, false],
  // A refused login or a dead line says nothing about the message.
  [{ code: 'EAUTH', responseCode: 535 }, false],
  [{ code: 'ECONNECTION' }, false],
  [new Error('anything'), false],
])('%o is final: %s', (error, expected) => {
  expect(isFinalRefusal(error)).toBe(expected);
});
