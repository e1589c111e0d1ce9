import type { ChecklistItem } from './checklist-item';
import { olderSlides, practice, rule } from './source';

/** In play the two roles change all the time: each line says whether it is the lead’s or the trail’s. */
export const duringTheGame: readonly ChecklistItem[] = [
  {
    id: 'during.areas',
    moment: 'during',
    role: 'both',
    text: 'Trail watches areas 1, 2, 3 and 6; lead watches area 4; area 5 is shared, and so is 6 inside the arc.',
    source: olderSlides,
  },
  {
    id: 'during.ten-players',
    moment: 'during',
    role: 'both',
    text: 'Work on opposite sides and keep all ten players between you.',
    source: practice,
  },
  {
    id: 'during.lead',
    moment: 'during',
    role: 'both',
    text: 'Lead: set up behind the end line, about midway between the three-point line and the restricted area.',
    source: practice,
  },
  {
    id: 'during.trail',
    moment: 'during',
    role: 'both',
    text: 'Trail: set up about midway between the centre line and the three-point line.',
    source: practice,
  },
  {
    id: 'during.lines',
    moment: 'during',
    role: 'both',
    text: 'Whoever has the side line or end line calls it: open hand straight up for a violation, closed fist for a foul, then direction, then the colour aloud.',
    source: practice,
  },
  {
    id: 'during.throw-in',
    moment: 'during',
    role: 'both',
    text: 'Throw-in: eyes to your partner, a look at clock and table, stand outside the thrower, count five seconds so that all can see it, drop the arm when the ball is touched on court.',
    source: practice,
  },
  {
    id: 'during.three-trail',
    moment: 'during',
    role: 'both',
    text: 'Three-point attempts from areas 1, 2, 3 and 6: trail signals. Every successful one: trail signals.',
    source: practice,
  },
  {
    id: 'during.three-lead',
    moment: 'during',
    role: 'both',
    text: 'Three-point attempt from area 4: lead signals the attempt, trail mirrors it and signals the success.',
    source: practice,
  },
  {
    id: 'during.report',
    moment: 'during',
    role: 'both',
    text: 'Report a foul standing still, 6 to 8 m from the table: colour, number, kind, free throws. Whoever reports becomes trail.',
    source: practice,
  },
  {
    id: 'during.free-throw-lead',
    moment: 'during',
    role: 'both',
    text: 'Free throws, lead: hand over the ball and watch the other lane.',
    source: practice,
  },
  {
    id: 'during.free-throw-trail',
    moment: 'during',
    role: 'both',
    text: 'Free throws, trail: stand level with the free-throw line just outside the three-point line; watch the shooter and the lane far from you.',
    source: practice,
  },
  {
    id: 'during.disagree',
    moment: 'during',
    role: 'chief',
    text: 'When you two, or the table, disagree: meet, listen, decide, and tell both coaches briefly.',
    source: rule('46'),
  },
  {
    id: 'during.chief-eyes',
    moment: 'during',
    role: 'umpire',
    text: 'Look at your partner at every dead ball before you put the ball in play.',
    source: practice,
  },
];

export const atTimeOuts: readonly ChecklistItem[] = [
  {
    id: 'time-out.acknowledge',
    moment: 'time-out',
    role: 'both',
    text: 'The official nearest the table acknowledges a time-out or substitution.',
    source: practice,
  },
  {
    id: 'time-out.places',
    moment: 'time-out',
    role: 'both',
    text: 'Spend it at one of the three places opposite the table, together; return to your former positions.',
    source: practice,
  },
  {
    id: 'time-out.horn',
    moment: 'time-out',
    role: 'both',
    text: 'Expect the horn with ten seconds left, and bring the teams back.',
    source: practice,
  },
  {
    id: 'time-out.say',
    moment: 'time-out',
    role: 'chief',
    text: 'Say one thing: team fouls, arrow, time-outs left, or what the next minute needs.',
    source: practice,
  },
  {
    id: 'time-out.half',
    moment: 'time-out',
    role: 'both',
    text: 'Be back on court five minutes before the third quarter.',
    source: olderSlides,
  },
];
