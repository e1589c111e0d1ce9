import { MINUTE_MS, type SlateFacts } from '../compile/facts';
import { type HardRule } from './hard-rule';

/** The whole duty lies inside one merged window. */
export function isAvailable(facts: SlateFacts, official: number, game: number): boolean {
  const from = facts.dutyFromMs[game]!;
  const to = facts.dutyToMs[game]!;
  for (let w = facts.availableStart[official]!; w < facts.availableStart[official + 1]!; w++) {
    if (facts.availableFromMs[w]! <= from && to <= facts.availableToMs[w]!) return true;
  }
  return false;
}

export const availabilityRule: HardRule = {
  id: 'H2',
  title: 'Available for the whole duty',
  onSeat(facts, official, seat) {
    const game = seat >> 1;
    if (isAvailable(facts, official, game)) return null;
    const missing = missingMinutes(facts, official, game);
    if (missing === null) return 'is not available at any time of this duty';
    return missing.before > 0 && missing.after > 0
      ? `is available only from ${missing.before} minutes after the duty starts to ${missing.after} minutes before it ends`
      : missing.before > 0
        ? `is available only from ${missing.before} minutes after the duty starts`
        : `is available only until ${missing.after} minutes before the duty ends`;
  },
};

/** What the best-fitting window leaves uncovered at either end; null when no window touches the duty. */
function missingMinutes(
  facts: SlateFacts,
  official: number,
  game: number,
): { before: number; after: number } | null {
  let best: { before: number; after: number } | null = null;
  for (let w = facts.availableStart[official]!; w < facts.availableStart[official + 1]!; w++) {
    const fromMs = facts.availableFromMs[w]!;
    const toMs = facts.availableToMs[w]!;
    if (toMs <= facts.dutyFromMs[game]! || fromMs >= facts.dutyToMs[game]!) continue;
    const before = Math.max(0, Math.ceil((fromMs - facts.dutyFromMs[game]!) / MINUTE_MS));
    const after = Math.max(0, Math.ceil((facts.dutyToMs[game]! - toMs) / MINUTE_MS));
    if (best === null || before + after < best.before + best.after) best = { before, after };
  }
  return best;
}
