import { type RaggedRows } from './arrays';
import { type SlateFacts } from './facts';

/** The facts with everything that search, bounds and explanations look up millions of times. */
export interface CompiledSlate extends SlateFacts {
  /**
   * At o · gameCount + g: which seats of game g official o may take, judged by the rules that look at
   * one official and one game alone (H1, H2, H5 but for partners, H7), and what it would cost.
   * 0 when neither seat is possible. Locks (H6) are not in it.
   */
  readonly fit: Uint8Array;
  /** Row o: games with at least one seat that official o may take, ascending. */
  readonly gamesOfOfficial: RaggedRows;
  /**
   * Row g: officials who may take at least one seat of game g, ascending. Together with
   * `gamesOfOfficial` it is `fit` by rows and by columns.
   */
  readonly officialsOfGame: RaggedRows;
  /**
   * H3 as a bit matrix for each day: bit (h − dayStart[d]) of row (g − dayStart[d]) is set when game h
   * may directly follow game g in a tour. Row r of day d begins at followStart[d] + r · followWords[d].
   */
  readonly follow: Uint32Array;
  readonly followStart: Int32Array;
  readonly followWords: Int32Array;
}
