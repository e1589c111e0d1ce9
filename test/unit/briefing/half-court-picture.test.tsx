import { render } from 'preact-render-to-string';
import { fibaCourt } from '../../../src/briefing/court/court-dimensions';
import { halfCourtMarks } from '../../../src/briefing/court/half-court';
import { HalfCourtPicture, strokePath } from '../../../src/briefing/court/half-court-picture';

// Goal: the picture says in SVG what the marks say in metres. Method: paths are read back and compared.
const picture = (trailSide: 'left' | 'right') =>
  render(<HalfCourtPicture court={fibaCourt} trailSide={trailSide} title="Who watches what" />);

describe('the half court as SVG', () => {
  it('is one metre a unit, with the end line at the foot', () => {
    expect(picture('left')).toContain('viewBox="-8.7 -15.2 17.4 16.4"');
  });

  it('draws the three-point line through its junction, arc away from the end line', () => {
    const mark = halfCourtMarks(fibaCourt, 'left').find((one) => one.name === 'three-point-line');
    expect(mark && strokePath(mark)).toBe(
      'M -6.575 0 L -6.575 -2.9874 A 6.725 6.725 0 0 1 6.575 -2.9874 L 6.575 0',
    );
  });

  it('draws half the centre circle on this side of the centre line', () => {
    const mark = halfCourtMarks(fibaCourt, 'left').find((one) => one.name === 'centre-circle');
    expect(mark && strokePath(mark)).toBe('M -1.775 -14 A 1.775 1.775 0 0 0 1.775 -14');
  });

  it('shows every mark, six areas and both officials, and mirrors', () => {
    const left = picture('left');
    expect(left.match(/data-mark=/g)).toHaveLength(10);
    expect(left.match(/data-area=/g)).toHaveLength(6);
    expect(left.match(/data-official=/g)).toHaveLength(2);
    expect(picture('right')).not.toBe(left);
    expect(left).toContain('aria-label="Who watches what"');
  });
});
