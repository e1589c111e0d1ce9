import { type Place, type TravelModel } from './problem';
import { sharedInt32, sharedWholeNumbers, type WholeNumbers } from './compile/arrays';

/** Mean Earth radius in metres, IUGG (Moritz, Geodetic Reference System 1980). */
export const EARTH_RADIUS_METRES = 6_371_008.8;

export interface Leg {
  readonly minutes: number;
  readonly metres: number;
}

/** Length of the great circle on the mean sphere, by the haversine formula. */
export function greatCircleMetres(a: Place, b: Place): number {
  return haversineMetres(b.lat - a.lat, b.lon - a.lon, Math.cos(radians(a.lat)) * Math.cos(radians(b.lat)));
}

/** From the differences in degrees and the product of the two latitudes' cosines. */
function haversineMetres(latDifference: number, lonDifference: number, cosines: number): number {
  const sinLat = Math.sin(radians(latDifference) / 2);
  const sinLon = Math.sin(radians(lonDifference) / 2);
  const h = sinLat * sinLat + cosines * sinLon * sinLon;
  return 2 * EARTH_RADIUS_METRES * Math.asin(Math.min(1, Math.sqrt(h)));
}

function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

/** Road metres (rounded half up) and whole minutes (rounded up) where nobody measured the way. */
export function estimateLeg(model: TravelModel, from: Place, to: Place): Leg {
  const metres = roadMetres(model, greatCircleMetres(from, to));
  return { metres, minutes: roadMinutes(model, metres) };
}

function roadMetres(model: TravelModel, straightMetres: number): number {
  return Math.floor(model.circuity * straightMetres + 0.5);
}

function roadMinutes(model: TravelModel, metres: number): number {
  return model.fixedMinutes + Math.ceil((metres * 60) / (1000 * model.speedKmh));
}

/** Ways from each of some places to each of others: entry `from · columns + to`. */
export interface TravelTable {
  readonly minutes: WholeNumbers;
  readonly metres: WholeNumbers;
  /** The entries that somebody measured, ascending; all others are estimates. */
  readonly measured: Int32Array;
}

/**
 * The ways between two sets of places: nothing from a place to itself, else the measured leg, else the
 * measured leg of the way back, else the estimate.
 */
export class TravelTables {
  private readonly legByWay = new Map<number, Leg>();
  private readonly indexById: ReadonlyMap<string, number>;
  /** By place: whether any measured leg begins or ends there. */
  private readonly hasLeg: Uint8Array;
  private readonly lat: Float64Array;
  private readonly lon: Float64Array;
  private readonly cosLat: Float64Array;
  private readonly minutesMax: number;
  private readonly metresMax: number;
  /** Some measured leg differs from its way back, so that tables of the two directions differ. */
  readonly asymmetric: boolean;

  constructor(
    private readonly model: TravelModel,
    private readonly places: readonly Place[],
  ) {
    this.indexById = new Map(places.map((place, index) => [place.id, index]));
    this.hasLeg = new Uint8Array(places.length);
    this.lat = Float64Array.from(places, (place) => place.lat);
    this.lon = Float64Array.from(places, (place) => place.lon);
    this.cosLat = Float64Array.from(places, (place) => Math.cos(radians(place.lat)));
    let metresMax = Math.ceil(model.circuity * EARTH_RADIUS_METRES * 3.2);
    let minutesMax = model.fixedMinutes + Math.ceil((metresMax * 60) / (1000 * model.speedKmh));
    for (const leg of model.legs ?? []) {
      const [from, to] = [this.placeIndex(leg.from), this.placeIndex(leg.to)];
      this.legByWay.set(this.way(from, to), leg);
      this.hasLeg[from] = this.hasLeg[to] = 1;
      metresMax = Math.max(metresMax, leg.metres);
      minutesMax = Math.max(minutesMax, leg.minutes);
    }
    this.metresMax = metresMax;
    this.minutesMax = minutesMax;
    this.asymmetric = (model.legs ?? []).some((leg) => {
      const back = this.legByWay.get(this.way(this.placeIndex(leg.to), this.placeIndex(leg.from)));
      return back !== undefined && (back.minutes !== leg.minutes || back.metres !== leg.metres);
    });
  }

  placeIndex(id: string): number {
    return this.indexById.get(id)!;
  }

  private way(from: number, to: number): number {
    return from * this.places.length + to;
  }

  /** `rows` and `columns` are place indexes; `backwards` gives the ways from column to row instead. */
  table(rows: ArrayLike<number>, columns: ArrayLike<number>, backwards = false): TravelTable {
    const minutes = sharedWholeNumbers(rows.length * columns.length, this.minutesMax);
    const metres = sharedWholeNumbers(rows.length * columns.length, this.metresMax);
    const measured: number[] = [];
    let entry = 0;
    for (let r = 0; r < rows.length; r++) {
      const row = rows[r]!;
      for (let c = 0; c < columns.length; c++, entry++) {
        const column = columns[c]!;
        if (row === column) continue;
        const known = backwards ? this.measuredLeg(column, row) : this.measuredLeg(row, column);
        if (known !== undefined) {
          measured.push(entry);
          minutes[entry] = known.minutes;
          metres[entry] = known.metres;
          continue;
        }
        const road = roadMetres(this.model, this.straightMetres(row, column));
        metres[entry] = road;
        minutes[entry] = roadMinutes(this.model, road);
      }
    }
    const entries = sharedInt32(measured.length);
    entries.set(measured);
    return { minutes, metres, measured: entries };
  }

  private straightMetres(one: number, other: number): number {
    const latDifference = this.lat[other]! - this.lat[one]!;
    const lonDifference = this.lon[other]! - this.lon[one]!;
    return haversineMetres(latDifference, lonDifference, this.cosLat[one]! * this.cosLat[other]!);
  }

  private measuredLeg(from: number, to: number): Leg | undefined {
    // Most places of a large slate have no measured leg, and looking two of them up each time takes long.
    if (this.hasLeg[from] === 0 || this.hasLeg[to] === 0) return undefined;
    return this.legByWay.get(this.way(from, to)) ?? this.legByWay.get(this.way(to, from));
  }
}
