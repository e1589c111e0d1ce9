/** After so many tries in vain a message is dead, and an administrator must look at it. */
export const attemptsMax = 12;

const firstDelayMinutes = 1;
const delayMinutesMax = 4 * 60;

/**
 * When to try again: after 1 minute, doubled each time, at most 4 hours; 12 tries take about a day and a half.
 *
 * @param attempts tries so far, from 1
 */
export function nextTry(now: Date, attempts: number): Date {
  const minutes = Math.min(delayMinutesMax, firstDelayMinutes * 2 ** (attempts - 1));
  return new Date(now.getTime() + minutes * 60_000);
}

/**
 * Whether trying again is pointless: the mail server refused this message or this address for good (a reply of
 * 5xx, RFC 5321 §4.2.1). A refused login or a lost connection says nothing about the message.
 */
export function isFinalRefusal(error: unknown): boolean {
  const { code, responseCode } = error as { code?: unknown; responseCode?: unknown };
  return (
    typeof responseCode === 'number' && responseCode >= 500 && (code === 'EENVELOPE' || code === 'EMESSAGE')
  );
}
