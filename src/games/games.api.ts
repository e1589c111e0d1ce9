import { Controller } from '@nestjs/common';
import type { z } from 'zod';
import { Allow } from '../access/allow';
import { CurrentMember, type Member } from '../access/member';
import { RequestError } from '../platform/request-error';
import { Tenancy } from '../platform/tenancy';
import { Input, Serve, type InputOf, type OutputOf } from '../web/api/operation';
import { DivisionsService } from './divisions.service';
import { listDivisions, listGames, listTeams, readGame, type gameSchema } from './game-schemas';
import { GamesService, type GameFilter, type GameView } from './games.service';
import { TeamsService } from './teams.service';

/** Games, divisions and teams for programs. */
@Controller()
export class GamesApi {
  constructor(
    private readonly tenancy: Tenancy,
    private readonly games: GamesService,
    private readonly divisions: DivisionsService,
    private readonly teams: TeamsService,
  ) {}

  @Serve(listGames)
  @Allow('member')
  async list(
    @CurrentMember() { associationId }: Member,
    @Input() { query }: InputOf<typeof listGames>,
  ): Promise<OutputOf<typeof listGames>> {
    const filter = withoutUndefined(query);
    const views = await this.tenancy.read(associationId, (tx) => this.games.list(tx, associationId, filter));
    return { items: views.map(answerOf), total: views.length };
  }

  @Serve(readGame)
  @Allow('member')
  async read(
    @CurrentMember() { associationId }: Member,
    @Input() { params }: InputOf<typeof readGame>,
  ): Promise<OutputOf<typeof readGame>> {
    const view = await this.tenancy.read(associationId, (tx) =>
      this.games.get(tx, associationId, params.gameId),
    );
    if (view === null) throw new RequestError('REQUEST.NOT_FOUND');
    return answerOf(view);
  }

  @Serve(listDivisions)
  @Allow('member')
  async listDivisions(@CurrentMember() { associationId }: Member): Promise<OutputOf<typeof listDivisions>> {
    const items = await this.tenancy.read(associationId, (tx) => this.divisions.list(tx, associationId));
    return { items, total: items.length };
  }

  @Serve(listTeams)
  @Allow('member')
  async listTeams(
    @CurrentMember() { associationId }: Member,
    @Input() { query: { divisionId } }: InputOf<typeof listTeams>,
  ): Promise<OutputOf<typeof listTeams>> {
    const filter = divisionId === undefined ? {} : { divisionId };
    const items = await this.tenancy.read(associationId, (tx) => this.teams.list(tx, associationId, filter));
    return { items, total: items.length };
  }
}

/** A filter that leaves a field out rather than naming it `undefined`. */
function withoutUndefined(query: InputOf<typeof listGames>['query']): GameFilter {
  const { fromDate, toDate, ...rest } = query;
  return {
    fromDate,
    toDate,
    ...Object.fromEntries(Object.entries(rest).filter(([, value]) => value !== undefined)),
  };
}

function answerOf(view: GameView): z.input<typeof gameSchema> {
  const { game, division, venue, court, home, away } = view;
  return { ...game, localTime: game.localTime.slice(0, 5), division, venue, court, home, away };
}
