import { seatRule } from './h1-seat';
import { availabilityRule } from './h2-availability';
import { betweenGamesRule } from './h3-between-games';
import { loadRule } from './h4-load';
import { conflictsRule } from './h5-conflicts';
import { locksRule } from './h6-locks';
import { reachRule } from './h7-reach';
import { minorsRule } from './h8-minors';
import { orderRule } from './h9-order';
import { restRule } from './h10-rest';
import { type HardRule } from './hard-rule';

/** Every hard rule, in the order of their ids. */
export const HARD_RULES: readonly HardRule[] = [
  seatRule,
  availabilityRule,
  betweenGamesRule,
  loadRule,
  conflictsRule,
  locksRule,
  reachRule,
  minorsRule,
  orderRule,
  restRule,
];
