import { In, IsNull, type EntityManager } from 'typeorm';
import { Association } from '../access/association.entity';
import { Game } from '../games/game.entity';
import { Assignment } from './assignment.entity';
import type { BuildProgress } from './build-progress';
import { Build } from './build.entity';
import { groupedBy } from './grouped-by';
import { previewPublication } from './preview-publication';
import { Proposal } from './proposal.entity';
import type { PublicationChanges } from './publication-changes';
import { Publication } from './publication.entity';
import { Seat } from './seat.entity';
import { SlateGame } from './slate-game.entity';
import { Slate } from './slate.entity';

/** A slate as one line of a list. Cancelled games and their seats are counted apart and nowhere else. */
export interface SlateSummary {
  readonly id: string;
  readonly name: string;
  /** Local dates, both inclusive. */
  readonly fromDate: string;
  readonly toDate: string;
  /** Of the working copy; send it back with a change. */
  readonly version: number;
  readonly games: number;
  readonly cancelledGames: number;
  readonly seats: {
    readonly total: number;
    readonly filled: number;
    /** Neither filled nor kept open on purpose. */
    readonly open: number;
    readonly keptOpen: number;
    readonly locked: number;
  };
  /** Of the assignments that officials count on now; declined ones have ended and are counted beside. */
  readonly replies: { readonly awaited: number; readonly accepted: number; readonly declined: number };
  /** The latest; null while nothing was published. */
  readonly published: {
    readonly number: number;
    readonly at: Date;
    readonly changes: PublicationChanges;
  } | null;
  /** What publishing would tell now. */
  readonly unpublished: PublicationChanges;
  readonly chosen: ProposalFigures | null;
  readonly latestBuild: {
    readonly id: string;
    readonly label: string;
    readonly state: Build['state'];
    readonly progress: BuildProgress | null;
  } | null;
}

/** A proposal's cost against what is proven. */
export interface ProposalFigures {
  readonly id: string;
  readonly label: string;
  readonly status: Proposal['status'];
  readonly totalCost: number;
  /** No legal slate costs less; null when nothing is proven. */
  readonly bound: number | null;
  readonly openSeats: number;
  readonly seconds: number;
  readonly createdAt: Date;
}

/** All slates of an association, the latest dates first; or one of them. */
export async function readSlateSummaries(
  tx: EntityManager,
  associationId: string,
  slateId?: string,
): Promise<SlateSummary[]> {
  const slates = await tx.find(Slate, {
    where: { associationId, ...(slateId === undefined ? {} : { id: slateId }) },
    order: { fromDate: 'desc', name: 'asc' },
  });
  const { policy } = await tx.findOneByOrFail(Association, { id: associationId });
  const ofSlates = { associationId, slateId: In(slates.map(({ id }) => id)) };
  const links = await tx.findBy(SlateGame, ofSlates);
  const gameIds = links.map((link) => link.gameId);
  const ofGames = { associationId, gameId: In(gameIds) };
  const gameById = new Map(
    (await tx.findBy(Game, { associationId, id: In(gameIds) })).map((game) => [game.id, game]),
  );
  const seatsByGame = groupedBy(await tx.findBy(Seat, ofGames), ({ gameId }) => gameId);
  const live = await tx.findBy(Assignment, { ...ofGames, endedAt: IsNull() });
  const liveByGame = groupedBy(live, ({ gameId }) => gameId);
  const declined = await tx.findBy(Assignment, { ...ofGames, endReason: 'declined' });
  const declinedByGame = groupedBy(declined, ({ gameId }) => gameId);
  const publications = groupedBy(
    await tx.find(Publication, { where: ofSlates, order: { number: 'asc' } }),
    (publication) => publication.slateId,
  );
  const builds = groupedBy(
    await tx.find(Build, { where: ofSlates, order: { requestedAt: 'asc' } }),
    (build) => build.slateId,
  );
  const figures = await readProposalFigures(
    tx,
    associationId,
    slates.flatMap((slate) => slate.chosenProposalId ?? []),
  );
  const linksBySlate = groupedBy(links, (link) => link.slateId);
  return slates.map((slate): SlateSummary => {
    const ids = (linksBySlate.get(slate.id) ?? []).map((link) => link.gameId);
    const all = ids.flatMap((id) => gameById.get(id) ?? []);
    const games = all.filter((game) => game.status !== 'CANCELLED');
    const seats = games.flatMap((game) => seatsByGame.get(game.id) ?? []);
    const assignments = ids.flatMap((id) => liveByGame.get(id) ?? []);
    const filled = seats.filter((seat) => seat.officialId !== null).length;
    const keptOpen = seats.filter((seat) => seat.officialId === null && seat.locked).length;
    const { added, revised, ended } = previewPublication({ games: all, seats, assignments, policy });
    const publication = publications.get(slate.id)?.at(-1);
    const build = builds.get(slate.id)?.at(-1);
    const repliesOf = (reply: Assignment['reply']) =>
      assignments.filter((assignment) => assignment.reply === reply).length;
    return {
      id: slate.id,
      name: slate.name,
      fromDate: slate.fromDate,
      toDate: slate.toDate,
      version: slate.version,
      games: games.length,
      cancelledGames: all.length - games.length,
      seats: {
        total: 2 * games.length,
        filled,
        open: 2 * games.length - filled - keptOpen,
        keptOpen,
        locked: seats.filter((seat) => seat.locked).length,
      },
      replies: {
        awaited: repliesOf('NEEDS-ACTION'),
        accepted: repliesOf('ACCEPTED'),
        declined: ids.flatMap((id) => declinedByGame.get(id) ?? []).length,
      },
      published:
        publication === undefined
          ? null
          : { number: publication.number, at: publication.publishedAt, changes: publication.changes },
      unpublished: { added: added.length, revised: revised.length, ended: ended.length },
      chosen: slate.chosenProposalId === null ? null : (figures.get(slate.chosenProposalId) ?? null),
      latestBuild:
        build === undefined
          ? null
          : { id: build.id, label: build.label, state: build.state, progress: build.progress },
    };
  });
}

/** Figures of proposals by id; their problems and answers, which are large, stay where they are. */
export async function readProposalFigures(
  tx: EntityManager,
  associationId: string,
  proposalIds: readonly string[],
): Promise<Map<string, ProposalFigures>> {
  const proposals = await tx.find(Proposal, {
    select: {
      id: true,
      label: true,
      status: true,
      totalCost: true,
      bound: true,
      openSeats: true,
      seconds: true,
      createdAt: true,
    },
    where: { associationId, id: In([...proposalIds]) },
  });
  return new Map(
    proposals.map(({ id, label, status, totalCost, bound, openSeats, seconds, createdAt }) => [
      id,
      { id, label, status, totalCost, bound, openSeats, seconds, createdAt },
    ]),
  );
}
