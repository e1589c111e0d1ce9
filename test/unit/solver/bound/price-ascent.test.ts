// Goal: also where only part of the officials look for weekends in a step, the bound kept is a bound. Method: a slate
// with enough officials for several parts, evaluated afresh at the prices kept, beside a legal slate's cost.
import { compileSlate } from '../../../../src/solver';
import { Lagrangian, PriceAscent } from '../../../../src/solver/bound/lagrangian';
import { startSlate } from '../../../../src/solver/search/start-slate';
import { randomSlate } from '../../../support/solver/random-slate';

it('keeps the value of a whole evaluation, below every legal slate', () => {
  const slate = compileSlate(randomSlate({ seed: 5, games: 80, officials: 220, publishedShare: 0.2 }));
  const start = startSlate(slate);
  if (!start.ok) throw new Error('this slate has no locks');
  const ascent = new PriceAscent(new Lagrangian(slate));
  const bounds: number[] = [];
  for (let step = 0; step < 40; step++) {
    ascent.step(start.cost);
    bounds.push(ascent.best);
  }
  expect(bounds).toEqual([...bounds].sort((a, b) => a - b));
  // Several parts mean that most steps judge nothing.
  expect(new Set(bounds).size).toBeLessThan(20);
  expect(new Set(bounds).size).toBeGreaterThan(2);
  expect(new Lagrangian(slate).evaluate(ascent.bestPrices)).toBeCloseTo(ascent.best, 6);
  expect(ascent.best).toBeLessThanOrEqual(start.cost);
});

it('sets out again from the best prices', () => {
  const slate = compileSlate(randomSlate({ seed: 6, games: 12, officials: 14 }));
  const ascent = new PriceAscent(new Lagrangian(slate));
  const target = 5000;
  while (!ascent.settled) ascent.step(target);
  const again = ascent.again();
  expect(again.settled).toBe(false);
  expect(again.best).toBe(ascent.best);
  again.step(target);
  expect(again.best).toBeGreaterThanOrEqual(ascent.best);
});
