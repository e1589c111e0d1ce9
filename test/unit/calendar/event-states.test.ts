import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { renderCalendar } from '../../../src/calendar/calendar-bytes';
import type { FeedEntry } from '../../../src/calendar/feed-input';
import { isInFeed, personalFeed } from '../../../src/calendar/personal-feed';
import { feedEntry, feedInput } from './feed-fixtures';

// Goal: every standing of an assignment looks in bytes as agreed. Method: the input of each is below, its
// expected bytes lie beside it in `states/`; the files were read line by line before they were kept.
const answered = { sequence: 0, revisedAt: new Date('2026-11-20T07:00:00Z') };
const ended = { sequence: 1, revisedAt: new Date('2026-11-21T07:00:00Z') };

const standings: Record<string, FeedEntry[]> = {
  'no-games': [],
  'published-no-reply': [feedEntry({})],
  accepted: [feedEntry({ assignment: { reply: 'ACCEPTED', ...answered } })],
  'umpire-with-minor-partner': [
    feedEntry({ assignment: { seat: 'umpire' }, partner: { givenName: 'Robin', isMinor: true } }),
  ],
  declined: [
    feedEntry({ assignment: { reply: 'DECLINED', endReason: 'declined', ...ended }, journey: null }),
  ],
  replaced: [feedEntry({ assignment: { endReason: 'replaced', ...ended }, journey: null })],
  withdrawn: [
    feedEntry({ assignment: { reply: 'ACCEPTED', endReason: 'withdrawn', ...ended }, journey: null }),
  ],
  postponed: [
    feedEntry({
      assignment: { reply: 'ACCEPTED', ...answered },
      game: { status: 'TENTATIVE', updatedAt: new Date('2026-11-22T08:00:00Z') },
    }),
  ],
  'new-date': [
    feedEntry({
      assignment: {
        sequence: 1,
        revisedAt: new Date('2026-11-23T08:00:00Z'),
        startsAt: new Date('2026-12-05T17:00:00Z'),
        endsAt: new Date('2026-12-05T18:45:00Z'),
        dutyStartsAt: new Date('2026-12-05T16:40:00Z'),
      },
    }),
  ],
  'game-cancelled': [
    feedEntry({
      assignment: { reply: 'ACCEPTED', endReason: 'game-cancelled', ...ended },
      game: { status: 'CANCELLED' },
      journey: null,
    }),
  ],
};

describe('the bytes of each standing', () => {
  it.each(Object.keys(standings))('%s', (name) => {
    const file = join(__dirname, 'states', `${name}.ics`);
    const bytes = renderCalendar(personalFeed(feedInput(standings[name] ?? [])));
    expect(bytes).toBe(readFileSync(file, 'utf8'));
  });
});

describe('what is in the feed', () => {
  const now = new Date('2026-11-28T12:00:00Z');
  const startingInDays = (days: number, end: Partial<FeedEntry['assignment']> = {}) =>
    feedEntry({ assignment: { startsAt: new Date(now.getTime() + days * 86_400_000), ...end } });

  it.each([
    [-60, true],
    [-60.01, false],
    [400, true],
    [400.01, false],
  ])('a game %d days from now: %s', (days, expected) => {
    expect(isInFeed(startingInDays(days), now)).toBe(expected);
  });

  it.each([
    [-14, true],
    [-14.01, false],
    [30, true],
  ])('a game that fell away, %d days from now: %s', (days, expected) => {
    expect(isInFeed(startingInDays(days, { endReason: 'replaced' }), now)).toBe(expected);
  });
});
