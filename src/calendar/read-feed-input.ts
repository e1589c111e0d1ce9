import { In, type EntityManager } from 'typeorm';
import type { Association } from '../access/association.entity';
import { isMinorOn } from '../roster/minors';
import { Official } from '../roster/official.entity';
import { readOfficialDuties, type OfficialDuty } from '../slates/official-days.query';
import type { FeedEntry, FeedInput } from './feed-input';
import { feedWindow, isInFeed } from './personal-feed';

/**
 * Reads everything that an official's feed shows at a moment, or null where the association has no such
 * official.
 *
 * @param publicUrl address of the service, without a trailing slash
 */
export async function readFeedInput(
  tx: EntityManager,
  options: {
    readonly association: Association;
    readonly officialId: string;
    readonly publicUrl: string;
    readonly now: Date;
  },
): Promise<FeedInput | null> {
  const { association, officialId, publicUrl, now } = options;
  const endingFrom = new Date(now.getTime() - feedWindow.pastDays * 24 * 60 * 60_000);
  const duties = await readOfficialDuties(tx, association, officialId, { endingFrom, withEnded: true });
  if (duties === null) return null;
  const partnerIds = duties.duties.flatMap(({ partner }) => (partner === null ? [] : [partner.id]));
  const partners = await tx.findBy(Official, {
    associationId: association.id,
    id: In([...new Set(partnerIds)]),
  });
  const birthDates = new Map(partners.map(({ id, birthDate }) => [id, birthDate]));
  const { adultAge, venueArrivalMinutes, travelMarginMinutes } = association.policy;
  return {
    association: { name: association.name, slug: association.slug, language: association.language },
    publicUrl,
    policy: { venueArrivalMinutes, travelMarginMinutes },
    entries: duties.duties
      .map((duty) =>
        feedEntry(duty, (officialId) =>
          isMinorOn(birthDates.get(officialId) ?? null, duty.game.localDate, adultAge),
        ),
      )
      .filter((entry) => isInFeed(entry, now)),
  };
}

function feedEntry(duty: OfficialDuty, isMinor: (officialId: string) => boolean): FeedEntry {
  const { assignment, game, venue, partner } = duty;
  return {
    assignment,
    game: {
      id: game.id,
      number: game.number,
      status: game.status,
      updatedAt: game.updatedAt,
      division: game.division.name,
      home: game.home.name,
      away: game.away.name,
    },
    venue: {
      name: venue.name,
      address: venue.address,
      town: venue.town,
      timeZone: venue.timeZone,
      place: duty.place,
      court: game.venue.id === venue.id ? (game.court?.name ?? null) : null,
      entrance: venue.entrance,
      parking: venue.parking,
      changingRoom: venue.changingRoom,
    },
    partner: partner === null ? null : { givenName: partner.givenName, isMinor: isMinor(partner.id) },
    journey: duty.journey,
  };
}
