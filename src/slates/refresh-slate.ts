import { In, IsNull, type EntityManager } from 'typeorm';
import { Game } from '../games/game.entity';
import { Assignment } from './assignment.entity';
import { seatNames } from './seat-name';
import { Seat } from './seat.entity';
import { SlateGame } from './slate-game.entity';
import { Slate } from './slate.entity';

/** What changed in a slate's list of games; ids in order. */
export interface RefreshedGames {
  /** Games of the slate's dates that no slate had. */
  readonly added: readonly string[];
  /** Games that moved to other dates before anybody was told of them. */
  readonly removed: readonly string[];
  /** Games that moved to other dates after publication: they stay, so that the next publication tells it. */
  readonly movedAway: readonly string[];
  readonly cancelled: readonly string[];
}

/**
 * Brings a slate's list of games up to date with the association's games. New games get two open seats; seats
 * of games that stay are left as they are. The slate's version rises when the list changes.
 *
 * @param slate locked by the caller for this transaction
 */
export async function refreshSlate(tx: EntityManager, slate: Slate): Promise<RefreshedGames> {
  const { associationId, id: slateId, fromDate, toDate } = slate;
  const free = await tx.query<{ id: string }[]>(
    `select g.id from game g
      where g.association_id = $1 and g.local_date between $2::date and $3::date and g.status <> 'CANCELLED'
        and not exists (select 1 from slate_game s where s.association_id = g.association_id and s.game_id = g.id)
      order by g.id`,
    [associationId, fromDate, toDate],
  );
  const links = await tx.findBy(SlateGame, { associationId, slateId });
  const own = await tx.findBy(Game, { associationId, id: In(links.map((link) => link.gameId)) });
  const live = await tx.findBy(Assignment, {
    associationId,
    gameId: In(own.map((game) => game.id)),
    endedAt: IsNull(),
  });
  const told = new Set(live.map((assignment) => assignment.gameId));
  const away = own.filter((game) => game.localDate < fromDate || game.localDate > toDate);
  const idsOf = (games: readonly Game[]) => games.map((game) => game.id).sort();
  const added = free.map((row) => row.id);
  const removed = idsOf(away.filter((game) => !told.has(game.id)));
  if (added.length > 0) await addGames(tx, slate, added);
  if (removed.length > 0) {
    await tx.delete(Seat, { associationId, gameId: In(removed) });
    await tx.delete(SlateGame, { associationId, slateId, gameId: In(removed) });
  }
  if (added.length + removed.length > 0) await raiseSlateVersion(tx, slate);
  return {
    added,
    removed,
    movedAway: idsOf(away.filter((game) => told.has(game.id))),
    cancelled: idsOf(own.filter((game) => game.status === 'CANCELLED')),
  };
}

/** Marks the working copy as changed, so that whoever looked at it before is told. Returns the new version. */
export async function raiseSlateVersion(tx: EntityManager, slate: Slate): Promise<number> {
  await tx.increment(Slate, { associationId: slate.associationId, id: slate.id }, 'version', 1);
  slate.version += 1;
  return slate.version;
}

async function addGames(tx: EntityManager, slate: Slate, gameIds: readonly string[]): Promise<void> {
  const { associationId, id: slateId } = slate;
  const links = gameIds.map((gameId) => ({ associationId, slateId, gameId }));
  await tx.insert(SlateGame, links);
  const seats = gameIds.flatMap((gameId) =>
    seatNames.map((seat) => ({ associationId, gameId, seat, officialId: null, locked: false, version: 1 })),
  );
  // A game that was in a slate before may have kept its seats.
  await tx.createQueryBuilder().insert().into(Seat).values(seats).orIgnore().execute();
}
