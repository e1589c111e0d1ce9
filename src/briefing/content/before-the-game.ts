import type { ChecklistItem } from './checklist-item';
import { conferenceSheets, olderSlides, policy, practice, rule } from './source';

export const beforeTheGame: readonly ChecklistItem[] = [
  {
    id: 'before.conference',
    moment: 'before',
    role: 'both',
    text: 'Talk for about ten minutes: what is at stake, jump ball and arrow, who watches what, double whistles, three-point attempts, switches and reporting, benches, time-outs, the end of a quarter.',
    source: conferenceSheets,
  },
  {
    id: 'before.colours',
    moment: 'before',
    role: 'both',
    text: 'Agree on the word for each team’s colour and use only that word aloud.',
    source: practice,
  },
  {
    id: 'before.emergency',
    moment: 'before',
    role: 'both',
    text: 'Find the defibrillator, the first aider and the entrance that an ambulance would use.',
    source: policy,
  },
  {
    id: 'before.on-court',
    moment: 'before',
    role: 'both',
    text: 'Be on court together {onCourtMinutes} minutes before tip-off: your powers begin there.',
    source: rule('46'),
  },
  {
    id: 'before.warm-up',
    moment: 'before',
    role: 'both',
    text: 'Stand opposite the table and watch both teams warm up.',
    source: olderSlides,
  },
  {
    id: 'before.equipment',
    moment: 'before',
    role: 'chief',
    text: 'Inspect floor, rings, boards, clocks and horns; say which clock counts; choose the ball.',
    source: rule('46'),
  },
  {
    id: 'before.players',
    moment: 'before',
    role: 'umpire',
    text: 'Count the players, compare shirts with the list, and look for anything worn that could hurt somebody.',
    source: practice,
  },
  {
    id: 'before.table',
    moment: 'before',
    role: 'umpire',
    text: 'Greet the table crew, learn who does what, and agree on how they reach you when something is wrong.',
    source: practice,
  },
  {
    id: 'before.starters',
    moment: 'before',
    role: 'chief',
    text: 'See that names and starters are confirmed and signed ten minutes before tip-off.',
    source: olderSlides,
  },
  {
    id: 'before.cross',
    moment: 'before',
    role: 'both',
    text: 'Two minutes before tip-off cross to the table side; 90 seconds before, send the teams to their benches.',
    source: olderSlides,
  },
];

export const atTheToss: readonly ChecklistItem[] = [
  {
    id: 'toss.chief',
    moment: 'toss',
    role: 'chief',
    text: 'Make the toss from outside the semicircle opposite the table.',
    source: practice,
  },
  {
    id: 'toss.begin',
    moment: 'toss',
    role: 'chief',
    text: 'The first quarter begins when the ball leaves your hand.',
    source: rule('9'),
  },
  {
    id: 'toss.umpire',
    moment: 'toss',
    role: 'umpire',
    text: 'Stand at the centre line on the table side, check that the table is ready, and tell the chief.',
    source: practice,
  },
  {
    id: 'toss.clock',
    moment: 'toss',
    role: 'umpire',
    text: 'Signal the clock to start when the toss is tapped. A toss that is not legal is made again.',
    source: practice,
  },
  {
    id: 'toss.umpire-lead',
    moment: 'toss',
    role: 'umpire',
    text: 'Go with the ball, whichever way it goes: you are the first lead.',
    source: practice,
  },
  {
    id: 'toss.chief-trail',
    moment: 'toss',
    role: 'chief',
    text: 'Wait for the play to go, then follow: you are the first trail.',
    source: practice,
  },
  {
    id: 'toss.arrow',
    moment: 'toss',
    role: 'both',
    text: 'See that the arrow points the right way after first control, and again after each jump ball situation.',
    source: practice,
  },
];
