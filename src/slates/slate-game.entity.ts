import { Entity, PrimaryColumn } from 'typeorm';

/** That a game belongs to a slate; a game belongs to one at most. */
@Entity('slate_game')
export class SlateGame {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  slateId!: string;

  @PrimaryColumn('uuid')
  gameId!: string;
}
