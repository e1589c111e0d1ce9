import { exchangeTours } from './exchange-tours';
import { fillCrew } from './fill-crew';
import { type Move } from './neighbourhood';
import { placeOfficial } from './place-official';
import { swapCrew } from './swap-crew';

/** The moves and how often each is drawn; shares add up to 1. */
const MIX: readonly { readonly move: Move; readonly share: number }[] = [
  { move: placeOfficial, share: 0.7 },
  { move: exchangeTours, share: 0.2 },
  { move: swapCrew, share: 0.04 },
  { move: fillCrew, share: 0.06 },
];

/** Draws one of the moves and lets it propose. */
export const drawMove: Move = (around, changes) => {
  let u = around.random.unit();
  for (const { move, share } of MIX) {
    if (u < share) return move(around, changes);
    u -= share;
  }
  return placeOfficial(around, changes);
};
