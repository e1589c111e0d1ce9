import type { Highs } from 'highs';

/** How a run of HiGHS ended. */
export interface ProgramOutcome {
  readonly proven: boolean;
  /** Null when no solution was found in time. */
  readonly cost: number | null;
  readonly bound: number;
  readonly values: Float64Array;
  readonly seconds: number;
}

export interface ProgramOptions {
  readonly seconds: number;
  /** Called with the cost of each better solution and the bound known then. */
  readonly onBetter?: (at: {
    readonly seconds: number;
    readonly cost: number;
    readonly bound: number;
  }) => void;
}

// Of HiGHS: the model state "optimal", the kind of callback for a better solution, and a feasible solution.
const OPTIMAL_MODEL = 7;
const IMPROVING_SOLUTION = 4;
const FEASIBLE_SOLUTION = 2;

/** A minimisation over columns of at least 0, written row by row. */
export class LinearProgram {
  /** Added to the cost of every solution. */
  offset = 0;
  private readonly costs: number[] = [];
  private readonly upper: number[] = [];
  private readonly whole: number[] = [];
  private readonly rows: { entries: readonly (readonly [number, number])[]; least: number; most: number }[] =
    [];

  addColumn(cost: number, most: number): number {
    this.whole.push(0);
    this.upper.push(most);
    return this.costs.push(cost) - 1;
  }

  /** A column that is 0 or 1. */
  addWhole(cost: number): number {
    const column = this.addColumn(cost, 1);
    this.whole[column] = 1;
    return column;
  }

  addRow(entries: readonly (readonly [number, number])[], least: number, most: number): void {
    this.rows.push({ entries, least, most });
  }

  solve(highs: Highs, { seconds, onBetter }: ProgramOptions): ProgramOutcome {
    const columns = this.costs.length;
    const rows = this.rows.length;
    return highs.withModel((model) => {
      model.options.set({ output_flag: false, time_limit: seconds, mip_rel_gap: 0, mip_abs_gap: 1e-6 });
      model.passModel({
        numCols: columns,
        numRows: rows,
        colCost: Float64Array.from(this.costs),
        colLower: new Float64Array(columns),
        colUpper: Float64Array.from(this.upper),
        rowLower: Float64Array.from(this.rows, ({ least }) => least),
        rowUpper: Float64Array.from(this.rows, ({ most }) => most),
        matrix: { ...this.matrix(), numRows: rows, numCols: columns },
        integrality: Int32Array.from(this.whole),
      });
      const startedAt = performance.now();
      const elapsed = () => (performance.now() - startedAt) / 1000;
      const { modelStatus } = model.run({
        [IMPROVING_SOLUTION]: ({ data }) => {
          const { objective_function_value: cost = Infinity, mip_dual_bound: bound = -Infinity } = data;
          onBetter?.({ seconds: elapsed(), cost: cost + this.offset, bound: bound + this.offset });
          return undefined;
        },
      });
      const isFeasible = Number(model.info.get('primal_solution_status')) === FEASIBLE_SOLUTION;
      return {
        proven: modelStatus === OPTIMAL_MODEL,
        cost: isFeasible ? model.getObjectiveValue() + this.offset : null,
        bound: Number(model.info.get('mip_dual_bound')) + this.offset,
        values: model.getSolution().colValue,
        seconds: elapsed(),
      };
    });
  }

  private matrix() {
    const starts = [0];
    const indices: number[] = [];
    const values: number[] = [];
    for (const { entries } of this.rows) {
      for (const [column, value] of entries) {
        indices.push(column);
        values.push(value);
      }
      starts.push(indices.length);
    }
    return {
      format: 'csr' as const,
      starts: Int32Array.from(starts),
      indices: Int32Array.from(indices),
      values: Float64Array.from(values),
    };
  }
}
