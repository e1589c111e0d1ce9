import { coverageAreas, setUpPlaces } from '../../../src/briefing/court/coverage-areas';
import { fibaCourt, threePointJunction } from '../../../src/briefing/court/court-dimensions';
import { halfCourtMarks, type CourtMark, type CourtMarkName } from '../../../src/briefing/court/half-court';

// Goal: every line of the drawing lies where the FIBA Official Basketball Rules, Art. 2, put its published edge.
// Method: the figures below are typed in from the rules, not imported; edges are the stroke's middle ± half its
// width. A centimetre is asked for, a tenth of a millimetre is what the numbers give.
const decimals = 4;

function mark(name: CourtMarkName): CourtMark {
  const found = halfCourtMarks(fibaCourt, 'left').find((one) => one.name === name);
  if (found === undefined) throw new Error(name);
  return found;
}

function extent(name: CourtMarkName) {
  const { points, strokeWidth } = mark(name);
  const xs = points.map((point) => point.x);
  const ys = points.map((point) => point.y);
  const half = strokeWidth / 2;
  return {
    inner: { left: Math.min(...xs) + half, right: Math.max(...xs) - half, near: Math.min(...ys) + half },
    outer: {
      left: Math.min(...xs) - half,
      right: Math.max(...xs) + half,
      near: Math.min(...ys) - half,
      far: Math.max(...ys) + half,
    },
  };
}

describe('the half court, Art. 2', () => {
  it('is 15 m wide and 14 m to the middle of the centre line, to the inner edge of lines 5 cm wide', () => {
    const { inner } = extent('boundary');
    expect(inner.right - inner.left).toBeCloseTo(15, decimals);
    expect(inner.near).toBeCloseTo(0, decimals);
    expect(mark('centre-line').points.map((point) => point.y)).toEqual([14, 14]);
    for (const one of halfCourtMarks(fibaCourt, 'left')) expect(one.strokeWidth).toBe(0.05);
  });

  it('has a centre circle of 1.80 m to its outer edge', () => {
    const [from, to] = mark('centre-circle').points;
    expect((to?.arc?.radius ?? 0) + 0.025).toBeCloseTo(1.8, decimals);
    expect((to?.x ?? 0) - (from?.x ?? 0)).toBeCloseTo(2 * 1.775, decimals);
    expect(from?.y).toBe(14);
  });

  it('has a free-throw line 3.60 m long whose far edge is 5.80 m from the end line', () => {
    const [from, to] = mark('free-throw-line').points;
    expect((to?.x ?? 0) - (from?.x ?? 0)).toBeCloseTo(3.6, decimals);
    expect(extent('free-throw-line').outer.far).toBeCloseTo(5.8, decimals);
  });

  it('has a restricted area of 4.90 by 5.80 m', () => {
    const { outer } = extent('restricted-area');
    expect(outer.right - outer.left).toBeCloseTo(4.9, decimals);
    expect(outer.far).toBeCloseTo(5.8, decimals);
  });

  it('has the basket 1.575 m from the end line', () => {
    const [left, right] = mark('ring').points;
    expect(left?.y).toBeCloseTo(1.575, decimals);
    expect(((left?.x ?? 0) + (right?.x ?? 0)) / 2).toBeCloseTo(0, decimals);
  });

  it('has a three-point line 6.75 m from the basket and 0.90 m from the side lines', () => {
    const points = mark('three-point-line').points;
    expect((points[2]?.arc?.radius ?? 0) + 0.025).toBeCloseTo(6.75, decimals);
    const { outer } = extent('three-point-line');
    expect(7.5 - outer.right).toBeCloseTo(0.9, decimals);
    expect(outer.left + 7.5).toBeCloseTo(0.9, decimals);
    // Every end of the arc lies on the circle around the basket.
    for (const index of [1, 2]) {
      const point = points[index];
      expect(Math.hypot(point?.x ?? 0, (point?.y ?? 0) - 1.575)).toBeCloseTo(6.725, decimals);
    }
  });

  it('joins arc and straight parts 2.990 m from the end line', () => {
    // √(6.75² − 6.60²) = √2.0025 = 1.41510; 1.575 + 1.41510 = 2.99010.
    expect(threePointJunction(fibaCourt)).toBeCloseTo(2.9901, decimals);
    expect(threePointJunction(fibaCourt)).toBeCloseTo(2.99, 2);
  });

  it('has a no-charge semicircle of 1.25 m', () => {
    const arc = mark('no-charge-semicircle').points.find((point) => point.arc !== undefined);
    expect((arc?.arc?.radius ?? 0) - 0.025).toBeCloseTo(1.25, decimals);
  });

  it.each(['left', 'right'] as const)('draws the throw-in line 8.325 m from the end line, %s', (side) => {
    const found = halfCourtMarks(fibaCourt, side).find((one) => one.name === 'throw-in-line');
    const [from, to] = found?.points ?? [];
    expect((from?.y ?? 0) + 0.025).toBeCloseTo(8.325, decimals);
    expect(Math.sign(to?.x ?? 0)).toBe(side === 'left' ? -1 : 1);
    expect(Math.abs(from?.x ?? 0)).toBeCloseTo(7.5, decimals);
  });
});

describe('the six coverage areas of two officials', () => {
  it.each(['left', 'right'] as const)('tile the half court, trail on the %s', (side) => {
    const areas = coverageAreas(fibaCourt, side);
    expect(areas.map((area) => area.number).sort()).toEqual([1, 2, 3, 4, 5, 6]);
    const sum = areas
      .map((area) => (area.to.x - area.from.x) * (area.to.y - area.from.y))
      .reduce((total, size) => total + size, 0);
    expect(sum).toBeCloseTo(15 * 14, decimals);
  });

  it('give 1, 2, 3 and 6 to the trail, 4 to the lead and 5 to both (older FIBA slides)', () => {
    const owners = Object.fromEntries(
      coverageAreas(fibaCourt, 'left').map((area) => [area.number, area.owner]),
    );
    expect(owners).toEqual({ 1: 'trail', 2: 'trail', 3: 'trail', 4: 'lead', 5: 'shared', 6: 'trail' });
  });

  it.each(['left', 'right'] as const)(
    'put area 6 on the trail’s side and 4 on the lead’s, trail %s',
    (side) => {
      const towardsTrail = side === 'left' ? -1 : 1;
      const middle = (number: number) => {
        const area = coverageAreas(fibaCourt, side).find((one) => one.number === number);
        return ((area?.from.x ?? 0) + (area?.to.x ?? 0)) / 2;
      };
      expect(Math.sign(middle(6))).toBe(towardsTrail);
      expect(Math.sign(middle(4))).toBe(-towardsTrail);
      expect(middle(5)).toBeCloseTo(0, decimals);
    },
  );

  it('set the officials up on opposite sides with all players between them (common practice)', () => {
    const places = setUpPlaces(fibaCourt, 'left');
    const lead = places.find((place) => place.who === 'lead')?.at;
    const trail = places.find((place) => place.who === 'trail')?.at;
    // Lead: off the end line, between restricted area (2.45) and three-point line (6.60), in the middle.
    expect(lead?.y).toBeLessThan(0);
    expect(lead?.x).toBeCloseTo((2.45 + 6.6) / 2, decimals);
    // Trail: midway between the top of the arc (1.575 + 6.75 = 8.325) and the centre line (14).
    expect(trail?.y).toBeCloseTo((8.325 + 14) / 2, decimals);
    expect(Math.sign(trail?.x ?? 0)).toBe(-Math.sign(lead?.x ?? 0));
  });
});
