// Goal: every shortage that is blamed for an open seat is one. Method: on random slates with few chiefs the sets are
// counted again from the definition: who may take a seat by the checker's rules, and how many of the seats each can work
// at most, by trying every subset.
import { explainOpenSeat, compileSlate, type PresentSlate } from '../../../../src/solver';
import { NOBODY, SEAT_KEPT_OPEN } from '../../../../src/solver/compile/facts';
import { solveAgain } from '../../../../src/solver/reasons/solve-again';
import { PlacedSlate } from '../../../support/solver/placed-slate';
import { randomSlate } from '../../../support/solver/random-slate';

/** The most of the games that one official can work with nobody else about, by the checker. */
function mostGames(
  placed: PlacedSlate,
  empty: Int32Array,
  official: number,
  seats: readonly number[],
): number {
  let most = 0;
  for (let subset = 0; subset < 1 << seats.length; subset++) {
    const taken = seats.filter((_, i) => (subset >> i) % 2 === 1);
    if (taken.length <= most) continue;
    const holders = empty.slice();
    for (const seat of taken) holders[seat] = official;
    // A minor alone is another matter: somebody may be put beside them.
    if (placed.violations(holders).every(({ rule }) => rule === 'H8' || rule === 'H6')) most = taken.length;
  }
  return most;
}

const seen = { open: 0, shortages: 0, kinds: new Set<string>() };

it.each(Array.from({ length: 25 }, (_, i) => i + 1))('slate %i', (seed) => {
  const problem = randomSlate({
    seed,
    games: 12,
    officials: 9,
    chiefShare: 0.4,
    legShare: 0.2,
    lockedShare: 0.05,
  });
  const slate = compileSlate(problem);
  const empty = new Int32Array(2 * slate.gameCount).fill(NOBODY);
  const solved = solveAgain(slate, empty, { steps: 8192 });
  if (solved === null) return;
  const present: PresentSlate = { problem, slate, holders: solved.holders };
  const placed = new PlacedSlate(present);
  for (let seat = 0; seat < empty.length; seat++) {
    const reason = explainOpenSeat(slate, solved.holders, seat);
    expect(reason === null).toBe(solved.holders[seat] !== NOBODY);
    if (reason === null) continue;
    seen.open++;
    seen.kinds.add(reason.kind);
    expect(reason.kind === 'kept-open').toBe(slate.seatLock[seat] === SEAT_KEPT_OPEN);
    if (reason.kind !== 'needed-elsewhere') continue;
    const seats = reason.shortage.seats.map(
      (place) => 2 * slate.gameIds.indexOf(place.game) + (place.seat === 'chief' ? 0 : 1),
    );
    expect(seats).toContain(seat);
    if (seats.length > 9) continue;
    seen.shortages++;
    let room = 0;
    for (let official = 0; official < slate.officialCount; official++) {
      const own = seats.filter((one) => {
        const holders = empty.slice();
        holders[one] = official;
        const lock = slate.seatLock[one]!;
        return (
          (lock < 0 || lock === official) &&
          placed.violations(holders).every(({ rule }) => rule === 'H8' || rule === 'H6' || rule === 'H4')
        );
      });
      const most = mostGames(placed, empty, official, own);
      const stated = reason.shortage.officials.find(({ official: id }) => id === slate.officialIds[official]);
      expect(stated === undefined).toBe(own.length === 0);
      expect(stated?.roomFor ?? 0).toBeGreaterThanOrEqual(most);
      room += stated?.roomFor ?? 0;
    }
    expect(room).toBe(reason.shortage.room);
    expect(seats.length).toBeGreaterThan(room);
  }
});

it('met enough of them', () => {
  expect(seen.open).toBeGreaterThan(30);
  expect(seen.shortages).toBeGreaterThan(10);
  expect([...seen.kinds]).toEqual(
    expect.arrayContaining(['needed-elsewhere', 'nobody-eligible', 'kept-open']),
  );
});
