import { localParts } from '../platform/local-time';
import type { BriefingDay, BriefingInput } from './briefing-input';
import { homeAt, shortestGameMinutes } from './clock-of-the-day';
import { policy, rule, type Source } from './content/source';
import { leaveBy } from '../slates/day-journeys';

/** Something about the day that somebody should act on. */
export interface DayWarning {
  readonly text: string;
  readonly source: Source;
}

const minuteMs = 60_000;
const highwayCode: Source = { kind: 'published', name: 'UK Highway Code, rule 91' };
const youngWorkers: Source = { kind: 'published', name: 'Directive 94/33/EC, Art. 9; local law decides' };
const dailyRest: Source = {
  kind: 'published',
  name: 'association policy; Directive 2003/88/EC names 11 hours',
};

/** Driving of a day from which a break is advised: 15 minutes for every two hours (UK Highway Code, rule 91). */
const longDrivingMinutes = 120;

/** What is tight, late, long or contradictory about this game, the most urgent first. */
export function dayWarnings(input: BriefingInput): DayWarning[] {
  return [...gameWarnings(input), ...input.days.flatMap((day) => ownWarnings(day, input))];
}

function gameWarnings({
  game,
  venue,
  crew,
  venueHasChanged,
  playingRules,
  policy: rules,
}: BriefingInput): DayWarning[] {
  const warnings: DayWarning[] = [];
  const warn = (text: string, source: Source = policy) => warnings.push({ text, source });
  if (game.status === 'CANCELLED')
    warn('This game is cancelled. Do not set out; ask your assignor if in doubt.');
  if (game.status === 'TENTATIVE')
    warn('Date and time of this game are not settled. Ask your assignor before you set out.');
  if (game.startsAtNow.getTime() !== game.startsAt.getTime()) {
    const { date, time } = localParts(game.startsAtNow, venue.timeZone);
    warn(
      `The game list now says ${time} on ${date}. This sheet shows what the crew was told: ask your assignor which holds.`,
    );
  }
  if (venueHasChanged)
    warn('The game list now names another venue than the crew was told: ask your assignor which holds.');
  for (const seat of ['chief', 'umpire'] as const) {
    const member = crew.find((one) => one.seat === seat);
    if (member === undefined)
      warn(`Nobody has been named as ${seat === 'chief' ? 'crew chief' : 'umpire'} yet.`);
    else if (member.reply === 'NEEDS-ACTION') warn(`${member.name} has not replied yet.`);
  }
  const shortest = shortestGameMinutes(playingRules);
  if (game.durationMinutes < shortest) {
    warn(
      `Only ${game.durationMinutes} minutes are planned, but this division's rules need at least ${shortest}.`,
      rule('8'),
    );
  }
  if (rules.venueArrivalMinutes < rules.arrivalLeadMinutes) {
    warn('The association plans your arrival at the venue after you must be on court.', rule('46'));
  }
  return warnings;
}

function ownWarnings(day: BriefingDay, input: BriefingInput): DayWarning[] {
  return [...changeWarnings(day, input), ...restWarnings(day, input), ...drivingWarnings(day, input)];
}

/** Between two buildings on one day: before this game, and after it. */
function changeWarnings(day: BriefingDay, input: BriefingInput): DayWarning[] {
  const { game, policy: rules } = input;
  const onCourtAt = new Date(game.startsAt.getTime() - rules.arrivalLeadMinutes * minuteMs);
  const freeAt = new Date(game.startsAt.getTime() + (game.durationMinutes + rules.wrapUpMinutes) * minuteMs);
  const changes = [
    ...(day.journey.kind === 'from-venue'
      ? [
          {
            name: day.journey.from.venueName,
            to: 'here',
            freeAt: day.journey.from.dutyEndsAt,
            travel: day.journey.travel,
            onCourtAt,
          },
        ]
      : []),
    ...(day.onward === null || day.onward.travel === null
      ? []
      : [
          {
            name: 'here',
            to: day.onward.venueName,
            freeAt,
            travel: day.onward.travel,
            onCourtAt: day.onward.onCourtAt,
          },
        ]),
  ];
  return changes.flatMap((change) => {
    if (change.travel.minutes === 0) return [];
    const spare =
      Math.floor((change.onCourtAt.getTime() - change.freeAt.getTime()) / minuteMs) - change.travel.minutes;
    if (spare >= rules.travelMarginMinutes) return [];
    const way = `from ${change.name} to ${change.to}, ${change.travel.minutes} min by ${change.travel.model}`;
    const text =
      spare < 0
        ? `${day.name}: ${-spare} min too late on court by the plan (${way}). Tell your assignor now.`
        : `${day.name}: tight change of venue, ${spare} min to spare (${way}). Tell your partner in the next game.`;
    return [{ text, source: policy }];
  });
}

function restWarnings(day: BriefingDay, input: BriefingInput): DayWarning[] {
  const home = homeAt(day, input);
  if (home === null) return [];
  const warnings: DayWarning[] = [];
  if (day.leavesNextDayAt !== null) {
    const rest = Math.round((day.leavesNextDayAt.getTime() - home.getTime()) / minuteMs);
    if (rest < input.policy.minRestMinutes) {
      const hours = `${Math.floor(rest / 60)} h ${String(rest % 60).padStart(2, '0')} min`;
      warnings.push({ text: `${day.name}: late home and early away, ${hours} of rest.`, source: dailyRest });
    }
  }
  const { time } = localParts(home, input.venue.timeZone);
  if (day.isMinor && (time >= '22:00' || time < '06:00')) {
    warnings.push({
      text: `${day.name} is a minor and would be home at ${time}. Agree with the guardian beforehand on the way home.`,
      source: youngWorkers,
    });
  }
  return warnings;
}

function drivingWarnings(day: BriefingDay, input: BriefingInput): DayWarning[] {
  const warnings: DayWarning[] = [];
  if (day.drivingMinutes >= longDrivingMinutes) {
    warnings.push({
      text: `${day.name}: about ${day.drivingMinutes} min of driving today. Break for at least 15 minutes every two hours; do not drive when tired.`,
      source: highwayCode,
    });
  }
  const zone = input.venue.timeZone;
  const arriveAt = new Date(input.game.startsAt.getTime() - input.policy.venueArrivalMinutes * minuteMs);
  const leaves =
    day.journey.kind === 'from-home'
      ? leaveBy(arriveAt, day.journey.travel, input.policy.travelMarginMinutes)
      : null;
  const atNight = [leaves, homeAt(day, input)].some(
    (at) => at !== null && localParts(at, zone).time < '06:00',
  );
  if (atNight) {
    warnings.push({
      text: `${day.name}: this day has you driving between midnight and six. Avoid it if you can; share the car or stay.`,
      source: highwayCode,
    });
  }
  return warnings;
}
