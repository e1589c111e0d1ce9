import { afterTheGame } from './after-the-game';
import { atTheToss, beforeTheGame } from './before-the-game';
import type { ChecklistItem } from './checklist-item';
import { atTimeOuts, duringTheGame } from './during-the-game';

/** The default checklist of two officials, in the order of the day. */
export const defaultChecklist: readonly ChecklistItem[] = [
  ...beforeTheGame,
  ...atTheToss,
  ...duringTheGame,
  ...atTimeOuts,
  ...afterTheGame,
];
