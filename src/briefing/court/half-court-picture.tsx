import type { JSX } from 'preact';
import { coverageAreas, setUpPlaces, type CoverageArea, type TrailSide } from './coverage-areas';
import type { CourtDimensions } from './court-dimensions';
import { halfCourtMarks, type CourtMark } from './half-court';

/** Room around the court in the picture, metres. */
const margin = 1.2;

/**
 * The half court to scale with the six coverage areas and both officials at their set-up places; one metre is
 * one unit of the drawing. The end line is at the foot of the picture.
 */
export function HalfCourtPicture(props: {
  readonly court: CourtDimensions;
  readonly trailSide: TrailSide;
  readonly title: string;
}): JSX.Element {
  const { court, trailSide, title } = props;
  const width = court.width + 2 * margin;
  const height = court.length / 2 + 2 * margin;
  const marks = halfCourtMarks(court, 'left');
  return (
    <svg
      class="court-picture"
      viewBox={`${-court.width / 2 - margin} ${-court.length / 2 - margin} ${width} ${height}`}
      role="img"
      aria-label={title}
    >
      <title>{title}</title>
      <g fill="none" stroke="currentColor" stroke-width="0.04" stroke-dasharray="0.2 0.16" opacity="0.7">
        {coverageAreas(court, trailSide).map((area) => (
          <AreaOutline area={area} />
        ))}
      </g>
      <g fill="none" stroke="currentColor" stroke-linejoin="miter">
        {marks.map((mark) => (
          <path data-mark={mark.name} d={strokePath(mark)} stroke-width={mark.strokeWidth} />
        ))}
      </g>
      <g text-anchor="middle" fill="currentColor">
        {coverageAreas(court, trailSide).map((area) => (
          <AreaLabel area={area} />
        ))}
        {setUpPlaces(court, trailSide).map((place) => (
          <g data-official={place.who}>
            <circle cx={place.at.x} cy={-place.at.y} r="0.42" />
            <text x={place.at.x} y={-place.at.y + 0.19} font-size="0.55" font-weight="700" class="on-disc">
              {place.who === 'trail' ? 'T' : 'L'}
            </text>
          </g>
        ))}
      </g>
    </svg>
  );
}

function AreaOutline({ area }: { readonly area: CoverageArea }): JSX.Element {
  return (
    <rect
      x={area.from.x}
      y={-area.to.y}
      width={area.to.x - area.from.x}
      height={area.to.y - area.from.y}
      data-area={area.number}
    />
  );
}

const ownerWords = { trail: 'trail', lead: 'lead', shared: 'both' } as const;

function AreaLabel({ area }: { readonly area: CoverageArea }): JSX.Element {
  const x = (area.from.x + area.to.x) / 2;
  // Above the middle in the far row and below the basket's place in the near one, clear of the set-up places.
  const y = area.from.y === 0 ? 3.9 : area.from.y + (area.to.y - area.from.y) * 0.3;
  return (
    <>
      <text x={x} y={-y} font-size="1" font-weight="700">
        {area.number}
      </text>
      <text x={x} y={-y + 0.75} font-size="0.6">
        {ownerWords[area.owner]}
      </text>
    </>
  );
}

/** The stroke as an SVG path; the picture's y axis points down, so every y changes its sign. */
export function strokePath(mark: CourtMark): string {
  return mark.points
    .map((point, index) => {
      const to = `${metres(point.x)} ${metres(-point.y)}`;
      if (index === 0) return `M ${to}`;
      if (point.arc === undefined) return `L ${to}`;
      const before = mark.points[index - 1];
      const rightwards = before !== undefined && point.x > before.x;
      const sweep = rightwards === (point.arc.bulge === 'far') ? 1 : 0;
      return `A ${metres(point.arc.radius)} ${metres(point.arc.radius)} 0 0 ${sweep} ${to}`;
    })
    .join(' ');
}

/** To a tenth of a millimetre. */
function metres(value: number): string {
  return String(Math.round(value * 1e4) / 1e4);
}
