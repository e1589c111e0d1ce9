import { playingRulesSchema, type PlayingRules } from '../games/playing-rules';
import { memory, rule, type Source } from './content/source';

/** A playing rule of a division that is not the standard one. */
export interface DivisionRule {
  readonly label: string;
  readonly here: string;
  readonly standard: string;
  /** Article of the standard rule. */
  readonly source: Source;
}

/** The standard rules: FIBA Official Basketball Rules, Art. 8, 9, 18, 29, 40, 41, as the schema's defaults have them. */
export const standardRules: PlayingRules = playingRulesSchema.parse({});

/** What this division plays otherwise, in the order in which it matters on court. */
export function divisionRules(rules: PlayingRules): DivisionRule[] {
  const rows: [label: string, describe: (of: PlayingRules) => string, source: Source][] = [
    ['Periods', (of) => `${of.periods} × ${of.periodMinutes} min`, rule('8')],
    ['Intervals', (of) => `${of.intervalMinutes} min, half-time ${of.halfTimeMinutes} min`, rule('8')],
    ['Overtime', (of) => (of.overtimeMinutes === 0 ? 'none' : `${of.overtimeMinutes} min`), rule('8')],
    ['Clock', (of) => (of.clock === 'running' ? 'runs through' : 'stops with the whistle'), memory],
    [
      'Time-outs',
      (of) => `${of.timeOutsFirstHalf} in the first half, ${of.timeOutsSecondHalf} in the second`,
      rule('18'),
    ],
    ['Team fouls', (of) => `free throws from foul ${of.teamFoulLimit} of a quarter`, rule('41')],
    ['Player fouls', (of) => `out at ${of.playerFoulLimit}`, rule('40')],
    ['Shot clock', (of) => (of.shotClockSeconds === 0 ? 'none' : `${of.shotClockSeconds} s`), rule('29')],
    ['Three-point line', (of) => (of.threePointLine ? 'counts' : 'does not count'), rule('2')],
    ['Ball', (of) => `size ${of.ballSize}`, memory],
    ['Ring', (of) => `${(of.ringHeightCentimetres / 100).toFixed(2)} m`, memory],
  ];
  return rows.flatMap(([label, describe, source]) => {
    const here = describe(rules);
    const standard = describe(standardRules);
    return here === standard ? [] : [{ label, here, standard, source }];
  });
}
