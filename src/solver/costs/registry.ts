import { balanceTerm } from './balance';
import { changeTerm } from './change';
import { type CostTermRule } from './cost-term';
import { openTerm } from './open';
import { overLevelTerm } from './over-level';
import { pairingTerm } from './pairing';
import { partnerRepeatTerm } from './partner-repeat';
import { reluctantTerm } from './reluctant';
import { teamRepeatTerm } from './team-repeat';
import { travelTerm } from './travel';

/** Every cost term, in the order of `COST_TERMS`. */
export const COST_TERM_RULES: readonly CostTermRule[] = [
  openTerm,
  pairingTerm,
  travelTerm,
  balanceTerm,
  teamRepeatTerm,
  partnerRepeatTerm,
  overLevelTerm,
  reluctantTerm,
  changeTerm,
];
