import { type CompiledSlate } from '../compile/compiled-slate';
import { type Holders } from '../tours';

/** What a proof thread is started with; the slate's arrays and the control block are shared, not copied. */
export interface ProverSetting {
  readonly slate: CompiledSlate;
  readonly controlMemory: SharedArrayBuffer;
  readonly searchThreads: number;
  /**
   * When to stop, on the coordinator's clock; or how often to raise the prices, for a run whose result must
   * depend on no clock (it then proves a bound and leaves optimality alone).
   */
  readonly length: { readonly endSeconds: number } | { readonly priceSteps: number };
  /** The best slate when the thread starts. */
  readonly holders: Holders;
  readonly cost: number;
}

/** To the proof thread: a better slate has been found elsewhere. */
export interface BetterSlate {
  readonly holders: Holders;
  readonly cost: number;
}

/** From the proof thread. */
export type ProverNews =
  | { readonly kind: 'bound'; readonly bound: number }
  | { readonly kind: 'slate'; readonly holders: Holders; readonly cost: number }
  /** Nothing more will come; when `proven`, the best slate known is the cheapest there is. */
  | { readonly kind: 'end'; readonly proven: boolean };
