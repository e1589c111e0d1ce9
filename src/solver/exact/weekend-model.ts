import { type CrewChoices } from '../bound/crew-choice';
import { type CompiledSlate } from '../compile';
import { type SubsetRow } from './subset-rows';
import { type WeekendPool } from './weekend-pool';

/** A linear model by columns, as HiGHS takes it. */
export interface LinearModel {
  readonly numCols: number;
  readonly numRows: number;
  readonly colCost: Float64Array;
  readonly colLower: Float64Array;
  readonly colUpper: Float64Array;
  readonly rowLower: Float64Array;
  readonly rowUpper: Float64Array;
  readonly matrix: {
    readonly format: 'csc';
    readonly numRows: number;
    readonly numCols: number;
    readonly starts: Int32Array;
    readonly indices: Int32Array;
    readonly values: Float64Array;
  };
}

/** A crew of two classes that a game may still have, and what it costs above the game's cheapest. */
export interface CrewOption {
  readonly game: number;
  /** Classes; `classCount` is nobody. */
  readonly chiefClass: number;
  readonly umpireClass: number;
  readonly excess: number;
}

/** Two officials who should not meet in a game, and what it costs if they do (`Infinity`: they must not). */
export interface PartnerRow {
  readonly game: number;
  readonly officialA: number;
  readonly officialB: number;
  readonly price: number;
  /** The row's multiplier in the prices at hand, already imposed on the weekends as fines. */
  readonly multiplier: number;
}

export interface WeekendModelParts {
  readonly pool: WeekendPool;
  readonly crews: readonly CrewOption[];
  readonly partners: readonly PartnerRow[];
  readonly cuts: readonly SubsetRow[];
}

/**
 * Chooses one weekend for each official and one crew for each game so that the seats offered are the seats
 * asked for. Columns are the weekends of the pool, then the crews, then those of the partner rows. Costs are
 * excesses over what the prices at hand have already proven; all are at least 0.
 */
export function weekendModel(
  slate: CompiledSlate,
  { pool, crews, partners, cuts }: WeekendModelParts,
): LinearModel {
  const columns = new ColumnWriter();
  const rows = new RowWriter();
  const officialRow = (official: number): number => rows.rowOf(`official ${official}`, 1);
  const gameRow = (game: number): number => rows.rowOf(`game ${game}`, 1);
  const seatClassRow = (seat: number, officialClass: number): number =>
    rows.rowOf(`seat ${seat} ${officialClass}`, 0);

  // These come first, so that row indexes of cuts are known to the caller (`partners.length + cut`).
  const partnersOfStop = groupPartners(slate, partners);
  const cutsOfThing = groupCuts(cuts);
  const partnerRows = partners.map(({ multiplier }) => rows.add(multiplier > 0 ? 1 : -Infinity, 1));
  const cutRows = cuts.map(() => rows.add(-Infinity, 1));
  const hits = new Map<number, number>();

  for (let w = 0; w < pool.official.length; w++) {
    const official = pool.official[w]!;
    columns.entry(officialRow(official), 1);
    hits.clear();
    const hit = (thing: number): void => {
      for (const cut of cutsOfThing.get(thing) ?? []) hits.set(cut, (hits.get(cut) ?? 0) + 1);
    };
    hit(2 * slate.gameCount + official);
    for (let i = pool.seatStart[w]!; i < pool.seatStart[w + 1]!; i++) {
      const seat = pool.seats[i]!;
      columns.entry(seatClassRow(seat, slate.officialClass[official]!), 1);
      for (const partner of partnersOfStop.get(official * slate.gameCount + (seat >> 1)) ?? [])
        columns.entry(partnerRows[partner]!, 1);
      hit(seat);
    }
    for (const [cut, count] of hits) if (count >= 2) columns.entry(cutRows[cut]!, 1);
    columns.end(pool.excess[w]!);
  }
  for (const { game, chiefClass, umpireClass, excess } of crews) {
    columns.entry(gameRow(game), 1);
    if (chiefClass !== slate.classCount) columns.entry(seatClassRow(2 * game, chiefClass), -1);
    if (umpireClass !== slate.classCount) columns.entry(seatClassRow(2 * game + 1, umpireClass), -1);
    columns.end(excess);
  }
  partners.forEach(({ price, multiplier }, partner) => {
    if (price !== Infinity) {
      columns.entry(partnerRows[partner]!, -1);
      columns.end(price - multiplier);
    }
    if (multiplier > 0) {
      // The fines were imposed for a pair that is at most half there: what is missing is paid back.
      columns.entry(partnerRows[partner]!, 1);
      columns.end(multiplier);
    }
  });
  return columns.model(rows);
}

/** Crews whose excess at these prices is at most `gap`. */
export function crewOptions(
  slate: CompiledSlate,
  choices: CrewChoices,
  seatPrices: Float64Array,
  gap: number,
): readonly CrewOption[] {
  const nobody = slate.classCount;
  const options: CrewOption[] = [];
  for (let game = 0; game < slate.gameCount; game++) {
    const costs: number[] = [];
    for (let choice = choices.start[game]!; choice < choices.start[game + 1]!; choice++) {
      const chief = choices.chiefClass[choice]!;
      const umpire = choices.umpireClass[choice]!;
      costs.push(
        choices.cost[choice]! +
          choices.openCost[choice]! +
          (chief === nobody ? 0 : seatPrices[2 * game * nobody + chief]!) +
          (umpire === nobody ? 0 : seatPrices[(2 * game + 1) * nobody + umpire]!),
      );
    }
    const least = Math.min(...costs);
    costs.forEach((cost, i) => {
      const choice = choices.start[game]! + i;
      if (cost - least > gap) return;
      options.push({
        game,
        chiefClass: choices.chiefClass[choice]!,
        umpireClass: choices.umpireClass[choice]!,
        excess: cost - least,
      });
    });
  }
  return options;
}

function groupPartners(slate: CompiledSlate, partners: readonly PartnerRow[]): Map<number, number[]> {
  const groups = new Map<number, number[]>();
  partners.forEach(({ game, officialA, officialB }, row) => {
    for (const official of [officialA, officialB]) append(groups, official * slate.gameCount + game, row);
  });
  return groups;
}

function groupCuts(cuts: readonly SubsetRow[]): Map<number, number[]> {
  const groups = new Map<number, number[]>();
  cuts.forEach((things, cut) => {
    for (const thing of things) append(groups, thing, cut);
  });
  return groups;
}

function append(groups: Map<number, number[]>, key: number, value: number): void {
  const group = groups.get(key);
  if (group === undefined) groups.set(key, [value]);
  else group.push(value);
}

/** Rows by key are equalities, made when first asked for. */
class RowWriter {
  readonly lower: number[] = [];
  readonly upper: number[] = [];
  private readonly byKey = new Map<string, number>();

  add(lower: number, upper: number): number {
    this.lower.push(lower);
    this.upper.push(upper);
    return this.lower.length - 1;
  }

  rowOf(key: string, equals: number): number {
    let row = this.byKey.get(key);
    if (row === undefined) {
      row = this.add(equals, equals);
      this.byKey.set(key, row);
    }
    return row;
  }
}

class ColumnWriter {
  private readonly starts: number[] = [0];
  private readonly indices: number[] = [];
  private readonly values: number[] = [];
  private readonly costs: number[] = [];

  entry(row: number, value: number): void {
    this.indices.push(row);
    this.values.push(value);
  }

  end(cost: number): void {
    this.starts.push(this.indices.length);
    this.costs.push(cost);
  }

  model(rows: RowWriter): LinearModel {
    const numCols = this.costs.length;
    const numRows = rows.lower.length;
    return {
      numCols,
      numRows,
      colCost: Float64Array.from(this.costs),
      colLower: new Float64Array(numCols),
      colUpper: new Float64Array(numCols).fill(1),
      rowLower: Float64Array.from(rows.lower),
      rowUpper: Float64Array.from(rows.upper),
      matrix: {
        format: 'csc',
        numRows,
        numCols,
        starts: Int32Array.from(this.starts),
        indices: Int32Array.from(this.indices),
        values: Float64Array.from(this.values),
      },
    };
  }
}
