// Goal: what the search believes about cost and legality is true after every single move. Method: hot and
// cold random walks over generated slates, everything recomputed from scratch by rules and terms each time.
import { compileSlate } from '../../../src/solver';
import { Annealer } from '../../../src/solver/search/anneal';
import { assertConsistent } from '../../../src/solver/search/assert-state';
import { BestSlate } from '../../../src/solver/search/best-slate';
import { drawMove } from '../../../src/solver/search/moves/move-mix';
import { Neighbourhood, wholeSlate } from '../../../src/solver/search/moves/neighbourhood';
import { SlateState } from '../../../src/solver/search/slate-state';
import { startSlate } from '../../../src/solver/search/start-slate';
import { SeededRandom } from '../../../src/solver/random';
import { randomSlate } from '../../support/solver/random-slate';

describe('assertion mode', () => {
  it.each([
    { seed: 1, hot: 5000 },
    { seed: 2, hot: 200 },
    { seed: 3, hot: 20 },
  ])('holds along a walk of seed $seed at temperature $hot', ({ seed, hot }) => {
    const problem = randomSlate({
      seed,
      games: 14,
      officials: 13,
      minorShare: 0.6,
      publishedShare: 0.3,
      legShare: 0.4,
    });
    const slate = compileSlate(problem);
    const start = startSlate(slate);
    if (!start.ok) throw new Error('this slate has no locks');
    const state = new SlateState(slate, start.holders);
    let moves = 0;
    const annealer = new Annealer(new Neighbourhood(state, new SeededRandom(seed), wholeSlate(slate)), {
      move: drawMove,
      cooling: { hot, cold: hot / 10 },
      stopping: { progress: (done) => done / 20_000, isCancelled: () => moves > 1500 },
      best: new BestSlate(state.holders, state.cost, state.openCount),
      afterMove: () => {
        moves++;
        if (moves % 3 === 0) assertConsistent(state);
      },
    });
    while (annealer.round());
    assertConsistent(state);
    expect(moves).toBeGreaterThan(100);
  });

  it('names the term that differs', () => {
    const slate = compileSlate(randomSlate({ seed: 4, games: 8, officials: 10 }));
    const start = startSlate(slate);
    if (!start.ok) throw new Error('this slate has no locks');
    const tampered = new SlateState(slate, start.holders);
    const tour = tampered.tours.cost.findIndex((cost) => cost > 0);
    tampered.tours.cost[tour]! += 1;
    expect(() => assertConsistent(tampered)).toThrow(/^travel: /);
    const miscounted = new SlateState(slate, start.holders);
    miscounted.gamesHeld[0]! += 1;
    expect(() => assertConsistent(miscounted)).toThrow(/^balance: /);
  });
});
