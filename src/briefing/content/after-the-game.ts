import type { ChecklistItem } from './checklist-item';
import { conferenceSheets, practice, rule } from './source';

export const afterTheGame: readonly ChecklistItem[] = [
  {
    id: 'after.meet',
    moment: 'after',
    role: 'both',
    text: 'Meet at the centre line opposite the table and go to the table together.',
    source: practice,
  },
  {
    id: 'after.incidents',
    moment: 'after',
    role: 'chief',
    text: 'Write every incident on the back of the scoresheet before you sign it.',
    source: rule('46.10'),
  },
  {
    id: 'after.check',
    moment: 'after',
    role: 'umpire',
    text: 'Check score, fouls and names on the scoresheet, then sign.',
    source: practice,
  },
  {
    id: 'after.sign',
    moment: 'after',
    role: 'chief',
    text: 'Check the scoresheet and sign it last: your signature ends the crew’s connection with the game.',
    source: rule('46.9'),
  },
  {
    id: 'after.thank',
    moment: 'after',
    role: 'both',
    text: 'Thank the table crew and leave together.',
    source: practice,
  },
  {
    id: 'after.reflect',
    moment: 'after',
    role: 'both',
    text: 'Take five minutes: two things to keep, one to change, one question about the rules, and what must be reported.',
    source: conferenceSheets,
  },
];
