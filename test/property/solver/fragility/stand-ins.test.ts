// Goal: stand-ins are counted right, alone and with one more change. Method: on random legal slates every official is
// really put into every seat, and with every hand-over of a seat of theirs to every other official, by the checker.
import { compileSlate, studySeats, type PresentSlate } from '../../../../src/solver';
import { NOBODY, SEAT_FREE, SEAT_KEPT_OPEN } from '../../../../src/solver/compile/facts';
import { listStandIns } from '../../../../src/solver/fragility/stand-ins';
import { solveAgain } from '../../../../src/solver/reasons/solve-again';
import { PlacedSlate } from '../../../support/solver/placed-slate';
import { randomSlate } from '../../../support/solver/random-slate';

const seen = { alone: 0, withOneMore: 0, crewMate: 0, none: 0, keepsFree: 0, exchanges: 0 };

it.each(Array.from({ length: 14 }, (_, i) => i + 1))('slate %i', (seed) => {
  const problem = randomSlate({
    seed: 100 + seed,
    games: 6,
    officials: 13,
    minorShare: 0.4,
    legShare: 0.6,
    lockedShare: 0.1,
  });
  const slate = compileSlate(problem);
  const solved = solveAgain(slate, new Int32Array(2 * slate.gameCount).fill(NOBODY), { steps: 4096 });
  if (solved === null) return;
  const { holders } = solved;
  const present: PresentSlate = { problem, slate, holders };
  const placed = new PlacedSlate(present);
  // A lock on the seat is set aside, for its holder is away.
  const isLegal = (changes: readonly { readonly seat: number; readonly holder: number }[]) =>
    placed
      .violations(placed.with(changes))
      .every(({ rule, game }) => rule === 'H6' && game === slate.gameIds[changes[0]!.seat >> 1]);
  const officials = [...Array(slate.officialCount).keys()];
  const listed = new Map(listStandIns(slate, holders).map((standIns) => [standIns.seat, standIns]));
  for (let seat = 0; seat < holders.length; seat++) {
    const standIns = listed.get(seat);
    expect(standIns === undefined).toBe(slate.seatLock[seat] === SEAT_KEPT_OPEN);
    if (standIns === undefined) continue;
    const others = officials.filter((official) => official !== holders[seat]);
    const alone = others.filter((official) => isLegal([{ seat, holder: official }]));
    expect(standIns.alone).toEqual(alone);
    const withOneMore = others.filter(
      (official) =>
        !alone.includes(official) &&
        [...holders.keys()].some(
          (gives) =>
            holders[gives] === official &&
            slate.seatLock[gives] === SEAT_FREE &&
            others.some(
              (to) =>
                to !== official &&
                isLegal([
                  { seat, holder: official },
                  { seat: gives, holder: to },
                ]),
            ),
        ),
    );
    expect(standIns.withOneMore.map(({ official }) => official)).toEqual(withOneMore);
    for (const { official, gives, to } of standIns.withOneMore) {
      expect(
        isLegal([
          { seat, holder: official },
          { seat: gives, holder: to },
        ]),
      ).toBe(true);
      if (gives === (seat ^ 1)) seen.crewMate++;
    }
    seen.alone += alone.length;
    seen.withOneMore += withOneMore.length;
    if (alone.length === 0) seen.none++;
  }
  judgeReserves(present, placed);
});

/** Every seat without a stand-in is covered, and each way of covering it is legal but for the hours asked for. */
function judgeReserves(present: PresentSlate, placed: PlacedSlate): void {
  const study = studySeats(present);
  if (study.kind !== 'studied') throw new Error('the slate is legal');
  const { slate, holders } = present;
  const seatOf = (place: { readonly game: string; readonly seat: string }) =>
    2 * slate.gameIds.indexOf(place.game) + (place.seat === 'chief' ? 0 : 1);
  const { reserves, uncovered, atLeast } = study.reserves;
  expect(atLeast).toBeLessThanOrEqual(reserves.length);
  const bare = study.seats.filter(({ holder, alone }) => holder !== null && alone.length === 0);
  const covered = new Set(reserves.flatMap(({ covers }) => covers.map(({ place }) => seatOf(place))));
  const left = bare.map(({ place }) => seatOf(place)).filter((seat) => !covered.has(seat));
  expect(uncovered.map(seatOf)).toEqual(left);
  for (const { official, covers } of reserves) {
    const holder = slate.officialIds.indexOf(official);
    for (const { place, way } of covers) {
      const seat = seatOf(place);
      const changes = [{ seat, holder }];
      if (way.kind === 'exchange')
        changes.push({ seat: seatOf(way.gives), holder: slate.officialIds.indexOf(way.to) });
      const rules = placed.newViolations(holders, placed.with(changes)).map(({ rule }) => rule);
      expect(rules.filter((rule) => rule !== 'H6')).toEqual(way.kind === 'exchange' ? [] : ['H2']);
      if (way.kind === 'exchange') seen.exchanges++;
      else seen.keepsFree++;
    }
  }
}

it('met enough of each', () => {
  expect(seen.alone).toBeGreaterThan(40);
  expect(seen.withOneMore).toBeGreaterThan(20);
  expect(seen.crewMate).toBeGreaterThan(0);
  expect(seen.none).toBeGreaterThan(20);
  expect(seen.keepsFree).toBeGreaterThan(5);
  expect(seen.exchanges).toBeGreaterThan(0);
});

it('refuses an illegal slate with its violations', () => {
  const problem = randomSlate({ seed: 1, games: 4, officials: 4 });
  const slate = compileSlate(problem);
  const study = studySeats({ problem, slate, holders: new Int32Array(8).fill(0) });
  expect(study).toMatchObject({ kind: 'illegal' });
});
