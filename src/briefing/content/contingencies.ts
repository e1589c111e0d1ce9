import { memory, policy, practice, rule, type Source } from './source';

/** What to do when something goes wrong; the steps are in order. */
export interface Contingency {
  readonly id: string;
  readonly title: string;
  readonly steps: readonly string[];
  readonly source: Source;
}

/**
 * The usual cautions and no more: local rules and licensed people decide. `{emergencyNumber}` and `{assignor}`
 * stand for the association's.
 */
export const contingencies: readonly Contingency[] = [
  {
    id: 'partner-late',
    title: 'Partner late or absent',
    steps: [
      'Call your partner, then tell {assignor} at once; do not wait for tip-off.',
      'Tell both coaches and the table that the crew is not complete.',
      'Whether one official may go on alone is for the association to say; with children on court, ask first.',
      'Note the times and put them in the report.',
    ],
    source: policy,
  },
  {
    id: 'collapse',
    title: 'Somebody collapses and does not respond',
    steps: [
      'Stop the game. Call {emergencyNumber} and say the address under “Safety”.',
      'Send somebody for the defibrillator and somebody to the entrance; begin resuscitation or let the first aider begin.',
      'Aim: first shock within 3 to 5 minutes of the collapse.',
    ],
    source: { kind: 'published', name: 'NATA position statement, J Athl Train 52(4):384, 2017' },
  },
  {
    id: 'head-injury',
    title: 'A knock to the head',
    steps: [
      'Stop the game and call for the team’s medical person or the first aider.',
      'Recognise and remove: whoever may be concussed does not come back today without a medical assessment. Do not diagnose.',
      'If they worsen, call {emergencyNumber}.',
    ],
    source: { kind: 'published', name: 'Concussion Recognition Tool 6, Br J Sports Med 57(11):689' },
  },
  {
    id: 'injury',
    title: 'Another injury, or blood',
    steps: [
      'Let the play end unless waiting adds danger, then stop the clock and call for help.',
      'Do not move the person; leave treatment to people trained for it.',
      'Write it down without medical detail.',
    ],
    source: practice,
  },
  {
    id: 'clock',
    title: 'A clock fails',
    steps: [
      'Stop play. Ask the table what the clock showed last; both officials say what they saw.',
      'The chief names the clock that counts from now on, tells both coaches, and keeps a hand watch at the table.',
    ],
    source: rule('46'),
  },
  {
    id: 'power',
    title: 'Power cut, wet or unsafe floor, broken ring',
    steps: [
      'Stop the game and keep players off the floor.',
      'Ask the home team to put it right; note the time and the clock.',
      'If it is not safe, do not play on. The chief decides for the game; {assignor} hears of it at once.',
    ],
    source: rule('46'),
  },
  {
    id: 'crowd',
    title: 'Trouble with spectators or benches',
    steps: [
      'Stop the game and ask the home team’s responsible person to deal with it; stay together, away from the stands.',
      'If anyone is in danger, leave the floor with the table crew and call {emergencyNumber}.',
      'Write what you saw and heard, with times and words, before you sign.',
    ],
    source: practice,
  },
  {
    id: 'team-short',
    title: 'A team is late or has fewer than five players',
    steps: [
      'Keep the time from the scheduled start: 15 minutes without five players ready is a forfeit. The association’s rules decide.',
      'Write down who was there and when.',
    ],
    source: memory,
  },
  {
    id: 'abandoned',
    title: 'The game cannot be finished',
    steps: [
      'Keep score, time, team fouls and arrow as they stand; have the table write them down.',
      'Sign nothing as final; write the reason on the back of the scoresheet.',
      'Tell {assignor} today. What becomes of the game is for the competition to decide.',
    ],
    source: policy,
  },
];
