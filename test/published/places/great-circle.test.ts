// Goal: distances on the mean sphere are as near to those on the ellipsoid as the sphere can be, and the service's
// and the solver's are the same. Sources: published geodesics (named below) and C. F. F. Karney's library
// `geographiclib-geodesic`. Method: see `LEAST` and `MOST`.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Geodesic } from 'geographiclib-geodesic';
import { greatCircleMetres as onMap } from '../../../src/places/travel-estimate';
import { greatCircleMetres as inSolver } from '../../../src/solver/travel';
import { SeededRandom } from '../../../src/solver/random';

// WGS 84 (NIMA TR8350.2), and the mean radius of the sphere (IUGG).
const A_METRES = 6_378_137;
const FLATTENING = 1 / 298.257223563;
const MEAN_RADIUS_METRES = 6_371_008.8;
// A step on the ellipsoid is, for the same step of latitude and longitude, as many times one on the sphere as the
// radius of curvature has mean radii. The least is that of the meridian at the equator, the most that at the
// poles, so no length of any line is outside these: −0.56 % and +0.45 %.
const LEAST = (A_METRES * (1 - FLATTENING) ** 2) / MEAN_RADIUS_METRES;
const MOST = A_METRES / (1 - FLATTENING) / MEAN_RADIUS_METRES;

interface Ends {
  readonly lat1: number;
  readonly lon1: number;
  readonly lat2: number;
  readonly lon2: number;
}

/** Both implementations, having agreed. */
function sphereMetres({ lat1, lon1, lat2, lon2 }: Ends): number {
  const map = onMap({ latitude: lat1, longitude: lon1 }, { latitude: lat2, longitude: lon2 });
  const solver = inSolver({ id: 'a', lat: lat1, lon: lon1 }, { id: 'b', lat: lat2, lon: lon2 });
  expect(Math.abs(map - solver)).toBeLessThan(0.001);
  return solver;
}

function expectWithinTheError(ends: Ends, geodesicMetres: number): void {
  const ratio = geodesicMetres / sphereMetres(ends);
  expect({ ends, tooShort: ratio > MOST, tooLong: ratio < LEAST }).toEqual({
    ends,
    tooShort: false,
    tooLong: false,
  });
}

it('the error of the sphere is at most 0.56 %', () => {
  expect(LEAST - 1).toBeCloseTo(-0.0056, 4);
  expect(MOST - 1).toBeCloseTo(0.0045, 4);
});

it.each([
  // Geocentric Datum of Australia technical manual.
  {
    name: 'Flinders Peak to Buninyong',
    ends: {
      lat1: -37.9510334166667,
      lon1: 144.424867888889,
      lat2: -37.6528211388889,
      lon2: 143.926495527778,
    },
    metres: 54_972.271,
  },
  // A worked example published with an implementation of T. Vincenty, Survey Review 23 (1975).
  {
    name: "Land's End to John o'Groats",
    ends: { lat1: 50.06632, lon1: -5.71475, lat2: 58.64402, lon2: -3.07009 },
    metres: 969_954.166,
  },
])('$name', ({ ends, metres }) => {
  const { lat1, lon1, lat2, lon2 } = ends;
  expect(Geodesic.WGS84.Inverse(lat1, lon1, lat2, lon2).s12).toBeCloseTo(metres, 2);
  expectWithinTheError(ends, metres);
  // These two are mid-latitude ways, of which the sphere is nearer to the truth.
  expect(Math.abs(sphereMetres(ends) / metres - 1)).toBeLessThan(0.0024);
});

it("Karney's table", () => {
  const [header, ...lines] = readFileSync(join(__dirname, 'karney20.csv'), 'utf8').trim().split(/\r?\n/);
  const columns = header!.split(',');
  const rows = lines.map((line) => new Map(line.split(',').map((text, i) => [columns[i]!, Number(text)])));
  expect(rows).toHaveLength(20);
  for (const row of rows) {
    const [lat1, lon1, lat2, lon2, s12] = ['lat1', 'lon1', 'lat2', 'lon2', 's12_m'].map((name) =>
      row.get(name)!,
    );
    const ends = { lat1: lat1!, lon1: lon1!, lat2: lat2!, lon2: lon2! };
    expect(Geodesic.WGS84.Inverse(ends.lat1, ends.lon1, ends.lat2, ends.lon2).s12).toBeCloseTo(s12!, 5);
    expectWithinTheError(ends, s12!);
  }
});

it('ways of an association, some metres to some hundred kilometres, anywhere', () => {
  const random = new SeededRandom(1);
  for (let i = 0; i < 2000; i++) {
    const lat1 = 160 * random.unit() - 80;
    const lon1 = 360 * random.unit() - 180;
    const reach = 10 ** (-4 * random.unit());
    const lat2 = lat1 + 3 * reach * (2 * random.unit() - 1);
    const lon2 = lon1 + 3 * reach * (2 * random.unit() - 1);
    const metres = Geodesic.WGS84.Inverse(lat1, lon1, lat2, lon2).s12!;
    expectWithinTheError({ lat1, lon1, lat2, lon2 }, metres);
  }
});
