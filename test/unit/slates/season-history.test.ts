// Goal: the season is summed up from its seats with the right limits. Method: hand-counted games.
import { seasonHistory } from '../../../src/slates/season-history';
import { seasonStart } from '../../../src/slates/season-start';

const seat = (
  gameId: string,
  officialId: string,
  localDate: string,
  teams: [string, string] = ['a', 'b'],
) => ({
  gameId,
  officialId,
  localDate,
  homeTeamId: teams[0],
  awayTeamId: teams[1],
});
const limits = { seasonFrom: '2026-07-01', recentFrom: '2026-10-17', before: '2026-11-28' };

describe('season history', () => {
  it('counts games from the season start to the day before the slate', () => {
    const history = seasonHistory(
      [
        seat('g0', 'o', '2026-06-30'),
        seat('g1', 'o', '2026-07-01'),
        seat('g2', 'o', '2026-11-27'),
        seat('g3', 'o', '2026-11-28'),
      ],
      limits,
    );
    expect(history.get('o')?.priorGames).toBe(2);
  });

  it('counts partners and teams of the recent days only, from both sides', () => {
    const history = seasonHistory(
      [
        seat('g1', 'o', '2026-10-16', ['a', 'old']),
        seat('g1', 'p', '2026-10-16', ['a', 'old']),
        seat('g2', 'o', '2026-10-17', ['a', 'b']),
        seat('g2', 'p', '2026-10-17', ['a', 'b']),
        seat('g3', 'o', '2026-11-01', ['a', 'c']),
      ],
      limits,
    );
    expect(history.get('o')).toEqual({
      priorGames: 3,
      recentPartners: { p: 1 },
      recentTeams: { a: 2, b: 1, c: 1 },
    });
    expect(history.get('p')?.recentPartners).toEqual({ o: 1 });
  });

  it('keeps recent games of the last season as recent, not as prior', () => {
    const history = seasonHistory([seat('g1', 'o', '2026-06-20')], {
      seasonFrom: '2026-07-01',
      recentFrom: '2026-06-01',
      before: '2026-07-10',
    });
    expect(history.get('o')).toEqual({ priorGames: 0, recentPartners: {}, recentTeams: { a: 1, b: 1 } });
  });
});

it.each([
  ['2026-07-01', '2026-07-01'],
  ['2026-06-30', '2025-07-01'],
  ['2027-01-02', '2026-07-01'],
  ['2026-12-31', '2026-07-01'],
])('the season of %s began on %s', (date, start) => {
  expect(seasonStart(date)).toBe(start);
});
