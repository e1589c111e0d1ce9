import type { EntityManager } from 'typeorm';
import { readCrewOfficials, type CrewOfficial } from './crew-officials.query';
import { readGameCards, type GameCard } from './game-cards.query';
import { officialsConcerned, type PublicationPreview } from './preview-publication';
import { readReview, type PublicationReview } from './review-publication.query';
import type { SeatName } from './seat-name';
import { Slate } from './slate.entity';

/** One thing that one official would be told. */
export interface ToldLine {
  readonly game: GameCard;
  readonly seat: SeatName;
  readonly news: 'asked' | 'asked-again' | 'released';
  /** What is new for who is asked again. */
  readonly differences: readonly ('time' | 'venue' | 'seat')[];
  readonly reason: 'replaced' | 'withdrawn' | 'game-cancelled' | null;
}

/** Everything that one official would be told, by tip-off. */
export interface ToldOfficial {
  readonly official: CrewOfficial;
  readonly lines: readonly ToldLine[];
}

export interface PublicationView {
  readonly slate: Pick<Slate, 'id' | 'name'>;
  readonly review: PublicationReview;
  /** By name. */
  readonly told: readonly ToldOfficial[];
}

/** Who would be told what by publishing now, or null where the association has no such slate. */
export async function readPublicationView(
  tx: EntityManager,
  associationId: string,
  slateId: string,
): Promise<PublicationView | null> {
  const slate = await tx.findOneBy(Slate, { associationId, id: slateId });
  const review = await readReview(tx, associationId, slateId);
  if (slate === null || review === null) return null;
  const lines = linesOf(review.preview);
  const games = await readGameCards(tx, associationId, [...new Set(lines.map(({ gameId }) => gameId))]);
  const officials = await readCrewOfficials(tx, associationId, officialsConcerned(review.preview));
  const told = [...officials.values()].map((official) => ({
    official,
    lines: lines
      .filter(({ officialId }) => officialId === official.id)
      .flatMap(({ gameId, officialId: _officialId, ...line }) => {
        const game = games.get(gameId);
        return game === undefined ? [] : [{ ...line, game }];
      })
      .sort((left, right) => left.game.startsAt.getTime() - right.game.startsAt.getTime()),
  }));
  told.sort(({ official: left }, { official: right }) =>
    `${left.familyName} ${left.givenName}`.localeCompare(`${right.familyName} ${right.givenName}`),
  );
  return { slate: { id: slate.id, name: slate.name }, review, told };
}

type UnnamedLine = Omit<ToldLine, 'game'> & { readonly gameId: string; readonly officialId: string };

function linesOf({ added, revised, ended }: PublicationPreview): UnnamedLine[] {
  return [
    ...added.map(({ gameId, seat, officialId }) => ({
      gameId,
      seat,
      officialId,
      news: 'asked' as const,
      differences: [],
      reason: null,
    })),
    ...revised.map(({ gameId, seat, officialId, differences }) => ({
      gameId,
      seat,
      officialId,
      news: 'asked-again' as const,
      differences,
      reason: null,
    })),
    ...ended.map(({ gameId, seat, officialId, reason }) => ({
      gameId,
      seat,
      officialId,
      news: 'released' as const,
      differences: [],
      reason,
    })),
  ];
}
