// Goal: the estimate is the one that the slate problem defines, and a measured leg goes before it. Method: distances that can
// be worked out by hand on the sphere.
import {
  estimateTravel,
  greatCircleMetres,
  measuredLegs,
  travelBetween,
} from '../../../src/places/travel-estimate';

const model = { name: 'test', circuity: 1.3, speedKmh: 60, fixedMinutes: 4 };
const equator = { latitude: 0, longitude: 0 };
const degreeMetres = (6_371_008.8 * Math.PI) / 180;

test('a degree along the equator or a meridian, a quarter and half of the way round', () => {
  expect(greatCircleMetres(equator, { latitude: 0, longitude: 1 })).toBeCloseTo(degreeMetres, 6);
  expect(greatCircleMetres(equator, { latitude: 1, longitude: 0 })).toBeCloseTo(degreeMetres, 6);
  expect(greatCircleMetres(equator, { latitude: 90, longitude: 77 })).toBeCloseTo(90 * degreeMetres, 4);
  expect(greatCircleMetres({ latitude: 30, longitude: 0 }, { latitude: -30, longitude: 180 })).toBeCloseTo(
    180 * degreeMetres,
    4,
  );
});

test('metres are rounded to the nearest, minutes upward, with the fixed part added', () => {
  const estimate = estimateTravel(equator, { latitude: 0, longitude: 0.1 }, model);
  expect(estimate).toEqual({
    metres: Math.round(1.3 * 0.1 * degreeMetres),
    // 14.455 km at one kilometre a minute.
    minutes: 4 + 15,
    source: 'estimated',
    model: 'test',
  });
});

describe('between two places', () => {
  const a = { id: 'a', ...equator };
  const b = { id: 'b', latitude: 0, longitude: 0.1 };
  const c = { id: 'c', latitude: 0, longitude: 0.2 };
  const leg = (fromPlaceId: string, toPlaceId: string, minutes: number) => ({
    fromPlaceId,
    toPlaceId,
    minutes,
    metres: 1000 * minutes,
    model: 'driven by Ada',
  });
  const legs = measuredLegs([leg('a', 'b', 31), leg('b', 'a', 33), leg('c', 'b', 7)]);

  test('the same place is no way at all', () => {
    expect(travelBetween({ from: a, to: a }, model, legs)).toMatchObject({ minutes: 0, metres: 0 });
  });

  test('a measured leg of that direction, else of the other, else the estimate', () => {
    expect(travelBetween({ from: a, to: b }, model, legs)).toMatchObject({ minutes: 31, metres: 31_000 });
    expect(travelBetween({ from: b, to: a }, model, legs)).toMatchObject({ minutes: 33 });
    expect(travelBetween({ from: b, to: c }, model, legs)).toEqual({
      minutes: 7,
      metres: 7000,
      source: 'measured',
      model: 'measured: driven by Ada',
    });
    expect(travelBetween({ from: a, to: c }, model, legs)).toMatchObject({
      source: 'estimated',
      model: 'test',
    });
  });
});
