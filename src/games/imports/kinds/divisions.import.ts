import { playingRulesSchema } from '../../playing-rules';
import { amount, code, decimal, line, numbersOf, oneOf, wholeNumber, yesNo } from '../import-cells';
import { defineImportKind, optional, required } from '../import-kind';
import { levelCell } from './officials.import';

const rules = playingRulesSchema.parse({});

/** Columns of the playing rules; the field names are those of the schema, and so are the defaults. */
export const playingRuleColumns = {
  periods: optional(wholeNumber(1, 10), rules.periods, 'how many periods'),
  periodMinutes: optional(wholeNumber(1, 30), rules.periodMinutes, 'length of a period'),
  intervalMinutes: optional(wholeNumber(0, 30), rules.intervalMinutes, 'interval between periods'),
  halfTimeMinutes: optional(wholeNumber(0, 30), rules.halfTimeMinutes, 'half-time interval'),
  overtimeMinutes: optional(wholeNumber(0, 10), rules.overtimeMinutes, 'length of an overtime; 0 for none'),
  clock: optional(
    oneOf<'stopped' | 'running'>({ stopped: 'stopped', running: 'running' }, 'stopped or running'),
    rules.clock,
    'whether the game clock stops',
  ),
  timeOutsFirstHalf: optional(wholeNumber(0, 9), rules.timeOutsFirstHalf, 'time-outs of a team, first half'),
  timeOutsSecondHalf: optional(wholeNumber(0, 9), rules.timeOutsSecondHalf, 'time-outs, second half'),
  teamFoulLimit: optional(wholeNumber(1, 20), rules.teamFoulLimit, 'team foul from which free throws follow'),
  playerFoulLimit: optional(wholeNumber(1, 10), rules.playerFoulLimit, 'fouls with which a player is out'),
  shotClockSeconds: optional(wholeNumber(0, 60), rules.shotClockSeconds, 'shot clock; 0 for none'),
  threePointLine: optional(yesNo(), rules.threePointLine, 'whether it counts'),
  ballSize: optional(wholeNumber(3, 7), rules.ballSize, 'size of the ball'),
  ringHeightCentimetres: optional(wholeNumber(200, 305), rules.ringHeightCentimetres, 'height of the ring'),
  rulesNote: optional(line(500), rules.note, 'what else differs'),
};

/** Classes of games. */
export const divisionsImport = defineImportKind({
  name: 'divisions',
  noun: 'division',
  after: ['levels'],
  columns: {
    code: required(code(), 'short name by which other lists refer to the division'),
    name: required(line(120), 'its name'),
    chiefMinLevel: required(levelCell, 'lowest level of a crew chief'),
    umpireMinLevel: required(levelCell, 'lowest level of an umpire'),
    chiefTargetLevel: required(levelCell, 'level above which a chief is wasted here'),
    umpireTargetLevel: required(levelCell, 'level above which an umpire is wasted here'),
    pairingCost: required(
      numbersOf(decimal(0, 1_000_000)),
      'cost of a crew by level gap, from gap 0; the last holds for every larger gap',
    ),
    gameMinutes: required(wholeNumber(1, 600), 'planned length of a game'),
    priority: optional(decimal(0.01, 1000), 1, 'how much an open seat weighs here'),
    chiefFee: optional(amount(), 0, "the crew chief's fee"),
    umpireFee: optional(amount(), 0, "the umpire's fee"),
    ...playingRuleColumns,
  },
  keyOf: (division) => division.code,
  complete: (merged, context) => {
    if (merged.pairingCost.length === 0)
      context.fault('pairingCost', 'It states no cost.', 'write one or more numbers, as 6|2|0|3');
    for (const seat of ['chief', 'umpire'] as const) {
      const [min, target] = [merged[`${seat}MinLevel`], merged[`${seat}TargetLevel`]];
      if (target < min)
        context.fault(
          `${seat}TargetLevel`,
          `It is below the lowest level, ${min}.`,
          'raise it or lower the other',
        );
    }
    if (merged.umpireMinLevel > merged.chiefMinLevel)
      context.notice('umpireMinLevel', 'The umpire must be higher than the chief.', 'check the two columns');
    return merged;
  },
});
