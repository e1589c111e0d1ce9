import { Column, Entity, PrimaryColumn } from 'typeorm';
import type { PlayingRules } from './playing-rules';

/** A class of games with its levels, pairing table and playing rules. */
@Entity('division')
export class Division {
  @PrimaryColumn('uuid')
  associationId!: string;

  @PrimaryColumn('uuid')
  id!: string;

  @Column('text')
  code!: string;

  @Column('text')
  name!: string;

  @Column('smallint')
  chiefMinLevel!: number;

  @Column('smallint')
  umpireMinLevel!: number;

  @Column('smallint')
  chiefTargetLevel!: number;

  @Column('smallint')
  umpireTargetLevel!: number;

  /** Cost of a crew by its level gap, from gap 0; the last entry serves every larger gap. */
  @Column({ type: 'double precision', array: true })
  pairingCost!: number[];

  /** Planned length of a game from tip-off to the end. */
  @Column('integer')
  gameMinutes!: number;

  @Column('double precision')
  priority!: number;

  @Column('jsonb')
  playingRules!: PlayingRules;

  @Column('integer')
  feeChiefMinorUnits!: number;

  @Column('integer')
  feeUmpireMinorUnits!: number;

  @Column('integer')
  version!: number;
}
