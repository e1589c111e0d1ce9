import { localParts } from '../platform/local-time';
import { calendarDay } from '../web/format/instants';
import type { Briefing, ChecklistSection, ClockLine, LabelledText } from './briefing-document';
import type { BriefingInput, BriefingTeam } from './briefing-input';
import { clockOfTheDay } from './clock-of-the-day';
import { defaultChecklist } from './content/checklist';
import { moments, momentTitles } from './content/checklist-item';
import { contingencies } from './content/contingencies';
import { sourceWords } from './content/source';
import { careNotes, crewLines } from './crew-lines';
import { dayWarnings } from './day-warnings';
import { divisionRules } from './division-rules';
import { safetyNotes, venueNotes } from './venue-notes';

/** The pre-game sheet of one game. Nothing but its input is in it: no clock, no database. */
export function briefing(input: BriefingInput): Briefing {
  const { game, association, policy } = input;
  const { ruleEdition } = policy;
  return {
    association: association.name,
    title: `${game.home.name} v ${game.away.name}`,
    head: headLines(input),
    teams: [teamLine('Home', game.home), teamLine('Away', game.away)],
    crew: crewLines(input),
    warnings: dayWarnings(input).map(({ text, source }) => ({
      text,
      source: sourceWords(source, ruleEdition),
    })),
    clock: clockLines(input),
    checklist: checklist(input),
    divisionRules: divisionRules(input.playingRules).map(({ label, here, standard, source }) => ({
      label,
      text: here,
      standard,
      source: sourceWords(source, ruleEdition),
    })),
    divisionNote: input.playingRules.note.trim(),
    venue: venueNotes(input.venue),
    safety: safetyNotes(input.venue, association.emergencyNumber),
    care: careNotes(input),
    contingencies: contingencies.map(({ title, steps, source }) => ({
      title,
      steps: steps.map((step) => filled(step, input)),
      source: sourceWords(source, ruleEdition),
    })),
    ruleEdition,
  };
}

function headLines({ game, venue, association, policy }: BriefingInput): LabelledText[] {
  const { date, time, abbreviation } = localParts(game.startsAt, venue.timeZone);
  const address = [venue.address, venue.town].filter((part) => part.trim() !== '').join(', ');
  const lines = [
    {
      label: 'Tip-off',
      text: `${time}, ${calendarDay(date, association.language)} ${date.slice(0, 4)} (${venue.timeZone}, ${abbreviation})`,
    },
    {
      label: 'Where',
      text: [venue.name, game.court ?? '', address].filter((part) => part !== '').join(', '),
    },
    { label: 'Game', text: `${game.number}, ${game.division}` },
    { label: 'Rules', text: policy.ruleEdition },
    { label: 'Note', text: game.note.trim() },
  ];
  return lines.filter(({ text }) => text !== '');
}

function teamLine(side: string, team: BriefingTeam) {
  const colour = team.colour.trim();
  return {
    side,
    name: team.name,
    colour: colour === '' ? 'colour not noted: agree on a word at the warm-up' : `say “${colour}”`,
  };
}

function clockLines(input: BriefingInput): ClockLine[] {
  return clockOfTheDay(input).map(({ at, text, isAbout, source }) => ({
    at,
    time: clockTime(at, input.venue.timeZone),
    text,
    isAbout,
    source: sourceWords(source, input.policy.ruleEdition),
  }));
}

/** Zones are whole minutes away from Greenwich, so that the seconds are the same everywhere. */
function clockTime(at: Date, zone: string): string {
  const seconds = at.getUTCSeconds();
  const { time } = localParts(at, zone);
  return seconds === 0 ? time : `${time}:${String(seconds).padStart(2, '0')}`;
}

function checklist(input: BriefingInput): ChecklistSection[] {
  return moments.map((moment) => ({
    moment,
    title: momentTitles[moment],
    items: defaultChecklist
      .filter((item) => item.moment === moment)
      .map(({ id, role, text, source }) => ({
        id,
        role,
        text: filled(text, input),
        source: sourceWords(source, input.policy.ruleEdition),
      })),
  }));
}

/** Puts the association's own figures and names where a text of the content leaves room for them. */
function filled(text: string, { policy, association }: BriefingInput): string {
  const assignor =
    association.replyAddress === null ? 'your assignor' : `your assignor (${association.replyAddress})`;
  return text
    .replaceAll('{onCourtMinutes}', String(policy.arrivalLeadMinutes))
    .replaceAll('{emergencyNumber}', association.emergencyNumber)
    .replaceAll('{assignor}', assignor);
}
