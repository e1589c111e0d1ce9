// Goal: the slack of a detour is an upper limit, for pricing drops stops by it. Method: from every legal weekend
// of every official each game is left out in turn, by the checker's own rules and figures.
import { compileSlate, type SlateProblem } from '../../../../src/solver';
import { detourSlackMetres } from '../../../../src/solver/bound/detour-slack';
import { waysOf } from '../../../../src/solver/checker/ways';
import { bruteWeekends } from '../../../support/solver/brute-weekends';
import { harshSlate } from '../../../support/solver/harsh-slate';
import { aGame, anOfficial, aProblem } from '../../../support/solver/slate-builder';

/** Metres are the only cost of a weekend. */
function pricedByMetres(problem: SlateProblem): SlateProblem {
  const { weights } = aProblem({ weights: { travelPerKm: 1000 } }).policy;
  return { ...problem, policy: { ...problem.policy, weights } };
}

/** All games on one day, with an hour's road between them and a long gap asked for at one venue. */
function dayApart(problem: SlateProblem): SlateProblem {
  return {
    ...problem,
    policy: { ...problem.policy, sameVenueGapMinutes: 240 },
    officials: problem.officials.map((official) => ({ ...official, maxGamesPerDay: 4, maxGames: 4 })),
    games: problem.games.map((game, index) => ({
      ...game,
      tipOff: new Date(Date.UTC(2026, 9, 24, 6, 120 * index)).toISOString(),
      durationMinutes: 30,
    })),
  };
}

it('is at least what leaving any game out of a legal weekend adds, or infinite where that is illegal', () => {
  const counted = { longer: 0, illegal: 0, shorter: 0 };
  for (let seed = 1; seed <= 200; seed++) {
    const { problem } = harshSlate(seed, { games: 4, officials: 2 });
    const priced = seed % 2 === 0 ? pricedByMetres(problem) : dayApart(pricedByMetres(problem));
    const slate = compileSlate(priced);
    const slackMetres = detourSlackMetres(slate);
    for (const official of priced.officials) {
      const slack = slackMetres[slate.officialIds.indexOf(official.id)]!;
      const weekends = bruteWeekends(priced, official);
      const metresByGames = new Map(
        weekends.map(({ seats, cost }) => [seats.map(({ game }) => game).join(), cost]),
      );
      for (const { seats, cost } of weekends) {
        for (const left of seats) {
          const rest = seats.filter((seat) => seat !== left).map(({ game }) => game);
          const without = metresByGames.get(rest.join());
          const seen = { seed, official: official.id, from: seats.map(({ game }) => game), left: left.game };
          if (without === undefined) {
            counted.illegal++;
            expect({ ...seen, slack }).toEqual({ ...seen, slack: Infinity });
          } else {
            counted[without > cost ? 'longer' : 'shorter']++;
            expect({ ...seen, over: Math.max(0, without - cost - slack - 1e-6) }).toEqual({
              ...seen,
              over: 0,
            });
          }
        }
      }
    }
  }
  expect(Math.min(...Object.values(counted))).toBeGreaterThan(10);
});

describe('by hand', () => {
  const places = ['hall', 'north', 'south'].map((id, i) => ({ id, lat: 45 + i / 10, lon: 8 }));
  const games = ['hall', 'north', 'south'].map((venue, i) =>
    aGame(venue, new Date(Date.UTC(2026, 2, 7, 8 + 3 * i)).toISOString(), { venue }),
  );
  const slackOf = (legs: { from: string; to: string; minutes: number; metres: number }[], gap = 5) => {
    const travel = { circuity: 1.3, speedKmh: 60, fixedMinutes: 4, legs };
    const parts = { games, officials: [anOfficial('a')], own: { places, travel } };
    const problem = aProblem({ ...parts, policy: { sameVenueGapMinutes: gap } });
    return { metres: detourSlackMetres(compileSlate(problem))[0], ways: waysOf(problem) };
  };

  it('is the rounding where nobody measured a way', () => {
    expect(slackOf([]).metres).toBe(2);
  });

  it('is what a measured way is longer than the way round it', () => {
    const { metres, ways } = slackOf([{ from: 'north', to: 'south', minutes: 30, metres: 90_000 }]);
    expect(metres).toBe(90_000 - ways('north', 'hall').metres - ways('hall', 'south').metres);
  });

  it('is infinite where the direct way takes longer than the way round with a game on it', () => {
    expect(slackOf([{ from: 'north', to: 'south', minutes: 600, metres: 0 }]).metres).toBe(Infinity);
  });

  it('is infinite where the gap at one venue outlasts a game elsewhere', () => {
    expect(slackOf([], 5 + 20 + 10 + 60).metres).toBe(2);
    expect(slackOf([], 300).metres).toBe(Infinity);
  });
});
