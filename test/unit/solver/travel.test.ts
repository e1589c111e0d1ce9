// Goal: ways between places as the problem format defines them. Method: a degree of latitude has a known length on
// the sphere; measured legs and rounding are worked out by hand.
import { compileSlate } from '../../../src/solver';
import { EARTH_RADIUS_METRES, estimateLeg, greatCircleMetres } from '../../../src/solver/travel';
import { aGame, anOfficial, aProblem } from '../../support/solver/slate-builder';

const place = (id: string, lat: number, lon: number) => ({ id, lat, lon });
const DEGREE_METRES = (EARTH_RADIUS_METRES * Math.PI) / 180;

it('measures great circles on the mean sphere', () => {
  expect(greatCircleMetres(place('a', 45, 8), place('b', 46, 8))).toBeCloseTo(DEGREE_METRES, 4);
  expect(greatCircleMetres(place('a', 0, 179.5), place('b', 0, -179.5))).toBeCloseTo(DEGREE_METRES, 4);
  expect(greatCircleMetres(place('a', 90, 0), place('b', -90, 0))).toBeCloseTo(180 * DEGREE_METRES, 3);
});

it('rounds metres half up and minutes up', () => {
  const model = { circuity: 1, speedKmh: 60, fixedMinutes: 4 };
  const { metres, minutes } = estimateLeg(model, place('a', 45, 8), place('b', 45.01, 8));
  expect(metres).toBe(Math.floor(DEGREE_METRES / 100 + 0.5));
  expect(minutes).toBe(4 + 2);
});

describe('the ways of a slate', () => {
  const places = [place('hall', 45, 8), place('b', 45.1, 8), place('c', 45.2, 8)];
  const legs = [
    { from: 'hall', to: 'b', minutes: 9, metres: 900 },
    { from: 'c', to: 'b', minutes: 7, metres: 700 },
    { from: 'b', to: 'c', minutes: 8, metres: 800 },
    { from: 'c', to: 'c', minutes: 99, metres: 99 },
  ];
  const slate = compileSlate(
    aProblem({
      officials: [anOfficial('o'), anOfficial('p', { home: 'c' })],
      games: [
        aGame('g', '2026-03-07T09:00:00Z', { venue: 'b' }),
        aGame('h', '2026-03-07T12:00:00Z', { venue: 'c' }),
      ],
      own: { places, travel: { circuity: 1.3, speedKmh: 60, fixedMinutes: 4, legs } },
    }),
  );

  it('take the measured leg, else the one of the way back, else the estimate', () => {
    // Venues: b, c. Officials: o at hall, p at c.
    expect([...slate.betweenVenues.minutes]).toEqual([0, 8, 7, 0]);
    expect([...slate.outward.metres]).toEqual([900, Math.floor(1.3 * 0.2 * DEGREE_METRES + 0.5), 700, 0]);
    expect([...slate.homeward.metres]).toEqual([900, slate.outward.metres[1], 800, 0]);
  });
});
