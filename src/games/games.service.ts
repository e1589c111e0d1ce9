import { Injectable } from '@nestjs/common';
import { Between, In, type EntityManager } from 'typeorm';
import { Court } from '../places/court.entity';
import { Venue } from '../places/venue.entity';
import { Division } from './division.entity';
import { Game } from './game.entity';
import { Team } from './team.entity';

/** A game with the names of all it refers to. */
export interface GameView {
  readonly game: Game;
  readonly division: Pick<Division, 'id' | 'code' | 'name'>;
  readonly venue: Pick<Venue, 'id' | 'code' | 'name' | 'town'>;
  readonly court: Pick<Court, 'id' | 'name'> | null;
  readonly home: Pick<Team, 'id' | 'code' | 'name'>;
  readonly away: Pick<Team, 'id' | 'code' | 'name'>;
}

export interface GameFilter {
  /** Local dates, `YYYY-MM-DD`, both inclusive. */
  readonly fromDate: string;
  readonly toDate: string;
  readonly divisionId?: string;
  readonly venueId?: string;
  readonly teamId?: string;
  readonly status?: Game['status'];
}

/** Reads games. */
@Injectable()
export class GamesService {
  /** Games of some days in order of tip-off. */
  async list(tx: EntityManager, associationId: string, filter: GameFilter): Promise<GameView[]> {
    const { fromDate, toDate, divisionId, venueId, teamId, status } = filter;
    const where = {
      associationId,
      localDate: Between(fromDate, toDate),
      ...(divisionId === undefined ? {} : { divisionId }),
      ...(venueId === undefined ? {} : { venueId }),
      ...(status === undefined ? {} : { status }),
    };
    const games = await tx.find(Game, {
      where:
        teamId === undefined
          ? where
          : [
              { ...where, homeTeamId: teamId },
              { ...where, awayTeamId: teamId },
            ],
      order: { startsAt: 'asc', number: 'asc' },
    });
    return this.viewsOf(tx, associationId, games);
  }

  async get(tx: EntityManager, associationId: string, id: string): Promise<GameView | null> {
    return this.oneOf(tx, associationId, await tx.findOneBy(Game, { associationId, id }));
  }

  /** By the competition's number. */
  async findByNumber(tx: EntityManager, associationId: string, number: string): Promise<GameView | null> {
    return this.oneOf(tx, associationId, await tx.findOneBy(Game, { associationId, number }));
  }

  private async oneOf(tx: EntityManager, associationId: string, game: Game | null): Promise<GameView | null> {
    const [view] = game === null ? [] : await this.viewsOf(tx, associationId, [game]);
    return view ?? null;
  }

  private async viewsOf(
    tx: EntityManager,
    associationId: string,
    games: readonly Game[],
  ): Promise<GameView[]> {
    const among = (ids: readonly (string | null)[]) => ({
      associationId,
      id: In([...new Set(ids.filter((id) => id !== null))]),
    });
    const divisions = byId(await tx.findBy(Division, among(games.map((game) => game.divisionId))));
    const venues = byId(await tx.findBy(Venue, among(games.map((game) => game.venueId))));
    const courts = byId(await tx.findBy(Court, among(games.map((game) => game.courtId))));
    const teams = byId(
      await tx.findBy(Team, among(games.flatMap((game) => [game.homeTeamId, game.awayTeamId]))),
    );
    return games.map((game) => ({
      game,
      division: named(divisions, game.divisionId),
      venue: named(venues, game.venueId),
      court: game.courtId === null ? null : named(courts, game.courtId),
      home: named(teams, game.homeTeamId),
      away: named(teams, game.awayTeamId),
    }));
  }
}

function byId<T extends { readonly id: string }>(things: readonly T[]): ReadonlyMap<string, T> {
  return new Map(things.map((thing) => [thing.id, thing]));
}

function named<T>(things: ReadonlyMap<string, T>, id: string): T {
  const thing = things.get(id);
  if (thing === undefined) throw new Error(`Foreign key to ${id} leads nowhere.`);
  return thing;
}
