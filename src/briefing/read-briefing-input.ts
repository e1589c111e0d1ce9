import { In, type EntityManager } from 'typeorm';
import type { Association } from '../access/association.entity';
import { Division } from '../games/division.entity';
import { playingRulesSchema } from '../games/playing-rules';
import { localParts } from '../platform/local-time';
import { Venue } from '../places/venue.entity';
import { isMinorOn } from '../roster/minors';
import { Official } from '../roster/official.entity';
import { readGameCrew, type GameCrew } from '../slates/game-crew.query';
import { seatNames } from '../slates/seat-name';
import type { BriefingInput, BriefingOfficial } from './briefing-input';
import { readBriefingDay } from './read-briefing-day';

/** Who reads: an assignor sees everybody's way from and to home, one of the crew their own, an observer nobody's and no numbers. */
export type BriefingReader =
  | { readonly kind: 'assignor' }
  | { readonly kind: 'crew'; readonly officialId: string }
  | { readonly kind: 'observer' };

export interface BriefingRequest {
  readonly association: Association;
  readonly gameId: string;
  readonly reader: BriefingReader;
}

/** Reads everything that the briefing of a game shows, or null where the association has no such game. */
export async function readBriefingInput(
  tx: EntityManager,
  { association, gameId, reader }: BriefingRequest,
): Promise<BriefingInput | null> {
  const associationId = association.id;
  const crew = await readGameCrew(tx, associationId, gameId);
  if (crew === null) return null;
  const { game } = crew;
  const told = crew.chief?.assignment ?? crew.umpire?.assignment ?? null;
  const division = await tx.findOneByOrFail(Division, { associationId, id: game.division.id });
  const venue = await tx.findOneByOrFail(Venue, { associationId, id: told?.venueId ?? game.venue.id });
  const officials = await crewOfficials(tx, association, crew);
  const startsAt = told?.startsAt ?? game.startsAt;
  const days = [];
  for (const member of officials) {
    const isShown = reader.kind === 'assignor' || (reader.kind === 'crew' && reader.officialId === member.id);
    if (!isShown) continue;
    const day = await readBriefingDay(tx, association, { ...member, gameId });
    if (day !== null) days.push(day);
  }
  const { name, language, emergencyNumber, replyAddress } = association;
  return {
    association: { name, language, emergencyNumber, replyAddress },
    policy: association.policy,
    game: {
      number: game.number,
      status: game.status,
      startsAt,
      startsAtNow: game.startsAt,
      durationMinutes: told === null ? game.durationMinutes : minutesBetween(told.startsAt, told.endsAt),
      note: game.note,
      division: division.name,
      court: venue.id === game.venue.id ? (game.court?.name ?? null) : null,
      home: game.home,
      away: game.away,
    },
    playingRules: playingRulesSchema.parse(division.playingRules),
    venue,
    venueHasChanged: venue.id !== game.venue.id,
    crew: officials,
    showsContacts: reader.kind !== 'observer',
    days,
  };
}

async function crewOfficials(
  tx: EntityManager,
  association: Association,
  crew: GameCrew,
): Promise<(BriefingOfficial & { readonly id: string })[]> {
  const members = seatNames.flatMap((seat) => {
    const member = crew[seat];
    return member === null ? [] : [{ seat, ...member }];
  });
  const ids = members.map(({ official }) => official.id);
  const rows = await tx.findBy(Official, { associationId: association.id, id: In(ids) });
  return members.flatMap(({ seat, official, assignment }) => {
    const row = rows.find((one) => one.id === official.id);
    if (row === undefined) return [];
    const { date } = localParts(assignment.startsAt, crew.game.timeZone);
    return [
      {
        id: row.id,
        seat,
        name: official.name,
        isMinor: isMinorOn(row.birthDate, date, association.policy.adultAge),
        phone: row.phone,
        sharesPhone: row.sharePhoneWithCrew,
        guardianName: row.guardianName,
        guardianContact: row.guardianContact,
        reply: assignment.reply,
      },
    ];
  });
}

function minutesBetween(from: Date, to: Date): number {
  return Math.round((to.getTime() - from.getTime()) / 60_000);
}
