import type { PlayingRules } from '../games/playing-rules';
import { leaveBy } from '../slates/day-journeys';
import type { BriefingDay, BriefingInput } from './briefing-input';
import { olderSlides, policy, practice, rule, type Source } from './content/source';

/** One moment of the day around a game. */
export interface ClockStep {
  readonly at: Date;
  readonly text: string;
  readonly isAbout: boolean;
  readonly source: Source;
}

const minuteMs = 60_000;

/** Before tip-off, by the older FIBA slides for two officials. Minutes. */
const stepsBeforeTipOff = [
  { minutes: 10, text: 'Names and starters confirmed and signed' },
  { minutes: 6, text: 'Introduction of teams and officials' },
  { minutes: 3, text: 'Last part of the warm-up' },
  { minutes: 2, text: 'Cross to the table side' },
  { minutes: 1.5, text: 'Teams to their benches' },
] as const;

/** Back on court before the third quarter, older FIBA slides. Minutes. */
const backBeforeSecondHalf = 5;

/**
 * The least that a game takes by its rules when the clock never stops for anything but the intervals, minutes:
 * 4 × 10 + 2 + 15 + 2 = 59 by the standard rules (Art. 8).
 */
export function shortestGameMinutes(rules: PlayingRules): number {
  const gaps = rules.periods - 1;
  const halfTime = rules.periods > 1 ? rules.halfTimeMinutes : 0;
  return rules.periods * rules.periodMinutes + Math.max(0, gaps - 1) * rules.intervalMinutes + halfTime;
}

/**
 * When half-time begins by the planned length: both halves of the plan equally long around the interval, in proportion to
 * their quarters where their number is odd. Null for a game of one period.
 */
export function halfTimeStart(startsAt: Date, durationMinutes: number, rules: PlayingRules): Date | null {
  if (rules.periods < 2) return null;
  const share = Math.floor(rules.periods / 2) / rules.periods;
  const play = Math.max(0, durationMinutes - rules.halfTimeMinutes);
  return new Date(startsAt.getTime() + Math.round(play * share) * minuteMs);
}

/** The day of the game in order of time: what both do, then each official's own way there and home. */
export function clockOfTheDay(input: BriefingInput): ClockStep[] {
  const { game, policy: rules } = input;
  const tipOff = game.startsAt.getTime();
  const before = (minutes: number) => new Date(tipOff - minutes * minuteMs);
  const end = new Date(tipOff + game.durationMinutes * minuteMs);
  const half = halfTimeStart(game.startsAt, game.durationMinutes, input.playingRules);
  const steps: ClockStep[] = [
    ...input.days.flatMap((day) => ownSteps(day, input)),
    appointment(before(rules.venueArrivalMinutes), 'At the venue; meet your partner', policy),
    appointment(
      before(rules.arrivalLeadMinutes),
      `Both on court, opposite the table (${rules.arrivalLeadMinutes} minutes before tip-off)`,
      rule('46'),
    ),
    ...stepsBeforeTipOff
      .filter(({ minutes }) => minutes < rules.arrivalLeadMinutes)
      .map(({ minutes, text }) => appointment(before(minutes), text, olderSlides)),
    appointment(game.startsAt, 'Tip-off', policy),
    ...(half === null ? [] : halfTimeSteps(half, input.playingRules)),
    estimate(end, 'End of the game, as planned', policy),
    estimate(
      new Date(end.getTime() + rules.wrapUpMinutes * minuteMs),
      'Signed, talked over, free to go',
      policy,
    ),
  ];
  // Sorting keeps the order of equal instants.
  return steps.sort((left, right) => left.at.getTime() - right.at.getTime());
}

/** When an official is home, or null when they drive on or the way is not known. */
export function homeAt(day: BriefingDay, input: BriefingInput): Date | null {
  if (day.wayHome === null) return null;
  const free = input.game.durationMinutes + input.policy.wrapUpMinutes;
  const minutes = free + day.wayHome.minutes + input.policy.travelMarginMinutes;
  return new Date(input.game.startsAt.getTime() + minutes * minuteMs);
}

function halfTimeSteps(half: Date, rules: PlayingRules): ClockStep[] {
  const back = rules.halfTimeMinutes - backBeforeSecondHalf;
  return [
    estimate(half, `Half-time, ${rules.halfTimeMinutes} minutes`, practice),
    ...(back <= 0
      ? []
      : [estimate(new Date(half.getTime() + back * minuteMs), 'Back on court', olderSlides)]),
  ];
}

function ownSteps(day: BriefingDay, input: BriefingInput): ClockStep[] {
  const steps: ClockStep[] = [];
  const { travelMarginMinutes: margin, venueArrivalMinutes } = input.policy;
  if (day.journey.kind === 'from-home') {
    const arriveAt = new Date(input.game.startsAt.getTime() - venueArrivalMinutes * minuteMs);
    const { minutes, model } = day.journey.travel;
    const text = `${day.name}: leave home by now (${minutes} min by ${model}, ${margin} min margin)`;
    steps.push(appointment(leaveBy(arriveAt, day.journey.travel, margin), text, policy));
  }
  if (day.journey.kind === 'from-venue') {
    const { from, travel } = day.journey;
    const text = `${day.name}: leave ${from.venueName} (${travel.minutes} min by ${travel.model})`;
    steps.push(estimate(from.dutyEndsAt, text, policy));
  }
  const home = homeAt(day, input);
  if (home !== null && day.wayHome !== null) {
    const text = `${day.name}: home by (${day.wayHome.minutes} min by ${day.wayHome.model}, ${margin} min margin)`;
    steps.push(estimate(home, text, policy));
  }
  return steps;
}

function appointment(at: Date, text: string, source: Source): ClockStep {
  return { at, text, isAbout: false, source };
}

function estimate(at: Date, text: string, source: Source): ClockStep {
  return { at, text, isAbout: true, source };
}
